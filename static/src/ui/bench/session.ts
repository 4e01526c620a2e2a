// What this phone noted at the bench lately, the newest first, each with what belongs to it.

import type { OwnEntry } from "../../store/book.ts";
import type { JobName } from "./state.ts";

export interface Done {
  own: OwnEntry;
  /** The number that it counts for now. */
  number: string;
  /** With a container entered on the spot its registration: undone and moved together. */
  entries: readonly string[];
}

const KIND: { readonly [name in JobName]: string } = {
  fill: "filled",
  fine: "dosed",
  wash: "washed",
  inspect: "inspected",
};

/** A working day: the bench starts with an empty list the next morning. */
const HOURS = 12;

export const session = (
  own: readonly OwnEntry[],
  job: JobName,
  gyle: string,
  now: string,
): Done[] => {
  const moved = new Map<string, string>();
  for (const { entry, undone } of [...own].reverse()) {
    if (entry.kind === "renumbered" && !undone) moved.set(entry.facts.target, entry.facts.to);
  }
  const since = new Date(Date.parse(now) - HOURS * 3_600_000).toISOString();
  const counts = own.filter(({ entry, undone }) => !undone && entry.happened_at >= since);
  return counts
    .filter(
      ({ entry }) => entry.kind === KIND[job] && (job !== "fill" || entry.facts.gyle === gyle),
    )
    .map((one) => ({
      own: one,
      number: moved.get(one.entry.id) ?? one.entry.subject,
      entries: [...registrationOf(one, counts), one.entry.id],
    }))
    .sort((a, b) => b.own.entry.seq - a.own.entry.seq);
};

/** The registration made in the same tap: the entry just before it, of the same container. */
const registrationOf = (one: OwnEntry, own: readonly OwnEntry[]): string[] =>
  own
    .filter(
      ({ entry }) =>
        entry.kind === "registered" &&
        entry.subject === one.entry.subject &&
        entry.seq === one.entry.seq - 1,
    )
    .map(({ entry }) => entry.id);
