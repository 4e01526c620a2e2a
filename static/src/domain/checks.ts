/** What several steps do or look at in the same way. Twin of cellarapp/domain/checks.py. */
import { londonDate } from "./calendar.ts";
import type { Entry } from "./entries.ts";
import { raiseQuery } from "./queries.ts";
import { type Held, type Mark, mark, type Standing } from "./standing.ts";

export function sameDay(earlier: Mark, entry: Entry): boolean {
  return londonDate(earlier.since) === londonDate(entry.effective_at);
}

export function put(standing: Standing, entry: Entry, place: string): void {
  standing.place = { ...mark(entry), at: place, with_customer: false };
}

/** Scrapped is the end: nothing but registering anew puts another hold in its place. */
export function hold(standing: Standing, entry: Entry, state: Held["state"]): void {
  if (standing.held?.state === "scrapped") return;
  standing.held = { ...mark(entry), state, why: entry.facts.why ?? "" };
}

export function countMove(standing: Standing, entry: Entry): void {
  const contents = standing.contents;
  if (contents) standing.contents = { ...contents, moves: contents.moves + 1, moved: mark(entry) };
}

/** To a place of the brewery; serving ends when it is another one than before. */
export function carry(standing: Standing, entry: Entry, place: string): void {
  if (standing.place?.at !== place) {
    standing.serving = null;
    countMove(standing, entry);
  }
  put(standing, entry, place);
}

export function checkHasBeer(standing: Standing, entry: Entry): void {
  if (standing.contents) return;
  const rule = entry.kind === "sent" ? "sent_empty" : "served_empty";
  raiseQuery(standing, rule, [entry.id], entry, { did: entry.kind });
}

export function checkFits(
  standing: Standing,
  entry: Entry,
  culprit: string,
  volumeMl: number,
): void {
  const capacityMl = standing.capacity_ml;
  if (capacityMl === null || volumeMl <= capacityMl) return;
  raiseQuery(standing, "overfull", [culprit], entry, {
    volume_ml: volumeMl,
    capacity_ml: capacityMl,
  });
}
