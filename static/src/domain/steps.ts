/** What each kind of entry does to a standing (LIFE-1 to LIFE-16). Twin of cellarapp/domain/steps.py. */
import { carry, checkFits, checkHasBeer, countMove, hold, put, sameDay } from "./checks.ts";
import { CONTAINER_KINDS } from "./containers.ts";
import type { ContainerEntryKind, CorrectionKind, Entry } from "./entries.ts";
import {
  AT_THE_BREWERY,
  beBack,
  beEmptied,
  beStillaged,
  beVented,
  endOfBeer,
} from "./inference.ts";
import { lapse, raiseQuery } from "./queries.ts";
import { blank, mark, type Settlement, type Standing } from "./standing.ts";

/** Changes the fresh standing it is given and answers with the steps it had to infer. */
type StepOf = (standing: Standing, entry: Entry) => string[];

const registered: StepOf = (standing, entry) => {
  const facts = entry.facts;
  if (standing.held?.state === "scrapped") {
    const { number, queries, settlements } = standing;
    Object.assign(standing, blank(number), { queries, settlements });
  }
  const first = standing.registered;
  if (first && (standing.kind !== facts.kind || standing.capacity_ml !== facts.capacity_ml)) {
    raiseQuery(standing, "registered_twice", [first.entry, entry.id], entry, {
      first_kind: standing.kind,
      second_kind: facts.kind,
    });
  }
  standing.registered = mark(entry);
  standing.kind = facts.kind;
  standing.shape = CONTAINER_KINDS[facts.kind]?.shape ?? null;
  standing.capacity_ml = facts.capacity_ml;
  standing.tare_g = facts.tare_g ?? standing.tare_g;
  standing.owner = facts.owner ?? standing.owner;
  if (standing.place === null || facts.place !== undefined) {
    put(standing, entry, facts.place ?? AT_THE_BREWERY);
  }
  const contents = standing.contents;
  if (contents) checkFits(standing, entry, contents.entry, contents.volume_ml);
  return [];
};

const washed: StepOf = (standing, entry) => {
  const inferred = [...beBack(standing, entry), ...beEmptied(standing, entry)];
  standing.clean = { ...mark(entry), state: "washed" };
  return inferred;
};

const inspected: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry);
  const passed: boolean = entry.facts.passed;
  standing.clean = { ...mark(entry), state: passed ? "passed" : "failed" };
  if (!passed) hold(standing, entry, "set_aside");
  return inferred;
};

const filled: StepOf = (standing, entry) => {
  const facts = entry.facts;
  const inferred = beBack(standing, entry);
  const before = standing.contents;
  if (before && sameDay(before, entry)) {
    raiseQuery(standing, "filled_twice", [before.entry, entry.id], entry, {
      first_gyle: before.gyle,
      second_gyle: facts.gyle,
    });
  } else {
    inferred.push(...beEmptied(standing, entry));
    const clean = standing.clean;
    if (clean?.state === "dirty" || clean?.state === "failed") {
      raiseQuery(standing, "unwashed", [entry.id], entry, { since: clean.since });
    }
  }
  const held = standing.held;
  if (held?.state === "set_aside") {
    raiseQuery(standing, "filled_set_aside", [held.entry, entry.id], entry, { why: held.why });
  }
  checkFits(standing, entry, entry.id, facts.volume_ml);
  standing.contents = {
    ...mark(entry),
    gyle: facts.gyle,
    volume_ml: facts.volume_ml,
    left_ml: facts.volume_ml,
    best_before: facts.best_before,
    moves: 0,
    dipped: null,
  };
  standing.serving = null;
  standing.fills += 1;
  if (facts.place !== undefined || standing.place === null) {
    put(standing, entry, facts.place ?? AT_THE_BREWERY);
  }
  return inferred;
};

const moved: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  carry(standing, entry, entry.facts.place);
  return inferred;
};

const stillaged: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const to: string | undefined = entry.facts.place;
  if (to !== undefined && standing.place?.at !== to) {
    put(standing, entry, to);
    inferred.push("moved");
  }
  standing.serving = { stillaged: mark(entry), vented: null, tapped: null };
  countMove(standing);
  return inferred;
};

const vented: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const [serving, missing] = beStillaged(standing, entry);
  standing.serving = { ...serving, vented: { ...mark(entry), spile: entry.facts.spile } };
  return [...inferred, ...missing];
};

const tapped: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const [onStillage, notStillaged] = beStillaged(standing, entry);
  const [serving, notVented] = beVented(onStillage, entry);
  standing.serving = { ...serving, tapped: mark(entry) };
  return [...inferred, ...notStillaged, ...notVented];
};

const dipped: StepOf = (standing, entry) => {
  const contents = standing.contents;
  if (!contents) {
    checkHasBeer(standing, entry);
    return [];
  }
  const leftMl: number = entry.facts.left_ml;
  if (leftMl > contents.left_ml) {
    const before = contents.dipped?.entry ?? contents.entry;
    raiseQuery(standing, "dip_rose", [before, entry.id], entry, {
      before_ml: contents.left_ml,
      now_ml: leftMl,
    });
  }
  checkFits(standing, entry, entry.id, leftMl);
  standing.contents = { ...contents, left_ml: leftMl, dipped: mark(entry) };
  return [];
};

const emptied: StepOf = (standing, entry) => {
  const clean = standing.clean;
  const notedToday = clean?.state === "dirty" && sameDay(clean, entry);
  if (!standing.contents && !notedToday) raiseQuery(standing, "emptied_empty", [entry.id], entry);
  endOfBeer(standing, entry, false);
  return [];
};

const sent: StepOf = (standing, entry) => {
  const facts = entry.facts;
  const trip = standing.trip;
  const inferred: string[] = [];
  if (trip && !(trip.customer === facts.customer && sameDay(trip, entry))) {
    if (trip.customer !== facts.customer) {
      raiseQuery(standing, "sent_elsewhere", [trip.entry, entry.id], entry, {
        first_customer: trip.customer,
        second_customer: facts.customer,
      });
    }
    inferred.push(...beBack(standing, entry, true));
  }
  const held = standing.held;
  if (held?.state === "set_aside") {
    raiseQuery(standing, "sent_set_aside", [held.entry, entry.id], entry, { why: held.why });
  }
  checkHasBeer(standing, entry);
  countMove(standing);
  standing.serving = null;
  standing.trip = { ...mark(entry), customer: facts.customer, due_on: facts.due_on };
  standing.place = { ...mark(entry), at: facts.customer, with_customer: true };
  return inferred;
};

const returned: StepOf = (standing, entry) => {
  const facts = entry.facts;
  const back = standing.returned;
  if (!standing.trip && back && sameDay(back, entry)) return [];
  const inferred = standing.trip ? [] : ["sent"];
  const contents = standing.contents;
  const ullageMl: number = facts.ullage_ml ?? 0;
  if (ullageMl > 0 && contents) {
    standing.contents = { ...contents, left_ml: Math.min(ullageMl, contents.left_ml) };
    standing.serving = null;
  } else {
    endOfBeer(standing, entry, false);
  }
  standing.trip = null;
  standing.returned = mark(entry);
  put(standing, entry, facts.place ?? AT_THE_BREWERY);
  return inferred;
};

const setAside: StepOf = (standing, entry) => {
  hold(standing, entry, "set_aside");
  return [];
};

const released: StepOf = (standing) => {
  if (standing.held?.state === "set_aside") standing.held = null;
  return [];
};

const missing: StepOf = (standing, entry) => {
  hold(standing, entry, "missing");
  return [];
};

const found: StepOf = (standing, entry) => {
  if (entry.facts.place === undefined) return [];
  const inferred = beBack(standing, entry);
  carry(standing, entry, entry.facts.place);
  return inferred;
};

const scrapped: StepOf = (standing, entry) => {
  hold(standing, entry, "scrapped");
  standing.contents = null;
  standing.serving = null;
  standing.trip = null;
  lapse(standing);
  return [];
};

/** For the history; the standing stays as it is. */
const wordsOnly: StepOf = () => [];

const settled: StepOf = (standing, entry) => {
  const { query, way, replaces = [] } = entry.facts;
  const kept: Settlement[] = standing.settlements[query] ?? [];
  const both = [...kept, { entry: entry.id, way, replaces }];
  both.sort((a, b) => (a.entry < b.entry ? -1 : 1));
  standing.settlements = { ...standing.settlements, [query]: both };
  return [];
};

export const STEPS: Readonly<Record<ContainerEntryKind | CorrectionKind, StepOf>> = {
  registered,
  washed,
  inspected,
  filled,
  moved,
  stillaged,
  vented,
  tapped,
  dipped,
  checked: wordsOnly,
  emptied,
  sent,
  returned,
  set_aside: setAside,
  released,
  missing,
  found,
  scrapped,
  noted: wordsOnly,
  voided: wordsOnly,
  renumbered: wordsOnly,
  settled,
};

const NOT_HANDLED = new Set<string>([
  "registered",
  "missing",
  "scrapped",
  "noted",
  "voided",
  "renumbered",
  "settled",
]);

/** Whether somebody has the container in hand, so that it cannot be missing. */
export function isHandled(kind: string): boolean {
  return Object.hasOwn(STEPS, kind) && !NOT_HANDLED.has(kind);
}
