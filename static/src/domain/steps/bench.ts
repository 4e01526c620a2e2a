/** At the racking bench: registered, washed, inspected, filled, dosed. Twin of cellarapp/domain/steps/bench.py. */
import { checkFits, checkHasBeer, hold, put, sameDay } from "../checks.ts";
import { CONTAINER_KINDS } from "../containers.ts";
import type { Entry, Facts } from "../entries.ts";
import { AT_THE_BREWERY, beBack, beEmptied } from "../inference.ts";
import { raiseQuery } from "../queries.ts";
import { blank, type Dose, mark } from "../standing.ts";
import type { StepOf } from "./step.ts";

export const registered: StepOf = (standing, entry) => {
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
  standing.hire = facts.hire ?? standing.hire;
  standing.inside = facts.inside ?? standing.inside;
  standing.limit_millibar = facts.limit_millibar ?? standing.limit_millibar;
  if (standing.place === null || facts.place !== undefined) {
    put(standing, entry, facts.place ?? AT_THE_BREWERY);
  }
  const contents = standing.contents;
  if (contents) checkFits(standing, entry, contents.entry, contents.volume_ml);
  return [];
};

export const washed: StepOf = (standing, entry) => {
  const inferred = [...beBack(standing, entry), ...beEmptied(standing, entry)];
  standing.clean = { ...mark(entry), state: "washed" };
  return inferred;
};

export const inspected: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry);
  const passed: boolean = entry.facts.passed;
  standing.clean = { ...mark(entry), state: passed ? "passed" : "failed" };
  if (!passed) hold(standing, entry, "set_aside");
  return inferred;
};

export const filled: StepOf = (standing, entry) => {
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
    doses: (facts.doses ?? []).map((dose: Facts) => doseOf(entry, dose, 0)),
    moves: 0,
    moved: null,
    dipped: null,
    dips: [],
    tasted: null,
  };
  standing.serving = null;
  standing.planned = null;
  standing.fills += 1;
  if (facts.place !== undefined || standing.place === null) {
    put(standing, entry, facts.place ?? AT_THE_BREWERY);
  }
  return inferred;
};

export const dosed: StepOf = (standing, entry) => {
  checkHasBeer(standing, entry);
  const contents = standing.contents;
  if (contents) {
    const dose = doseOf(entry, entry.facts, contents.moves);
    standing.contents = { ...contents, doses: [...contents.doses, dose] };
  }
  return [];
};

function doseOf(entry: Entry, said: Facts, moves: number): Dose {
  const { what, amount_ml = null, amount_g = null, lot = null } = said;
  return { ...mark(entry), what, amount_ml, amount_g, lot, moves };
}
