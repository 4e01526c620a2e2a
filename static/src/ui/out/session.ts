// What this phone noted at the van lately, the newest first, each with what belongs to it.

import type { Facts, Kind } from "../../domain/entries.ts";
import type { OwnEntry } from "../../store/book.ts";

export interface Done {
  own: OwnEntry;
  /** With a container entered on the spot its registration: both are undone together. */
  entries: readonly string[];
}

/** A working day: the next morning begins with an empty list. */
const HOURS = 12;

export const doneLately = (
  own: readonly OwnEntry[],
  kind: Kind,
  now: string,
  which: (facts: Facts) => boolean = () => true,
): Done[] => {
  const since = new Date(Date.parse(now) - HOURS * 3_600_000).toISOString();
  const counts = own.filter((one) => !one.undone && one.entry.happened_at >= since);
  return counts
    .filter(({ entry }) => entry.kind === kind && which(entry.facts))
    .sort((a, b) => b.entry.seq - a.entry.seq)
    .map((one) => ({ own: one, entries: [...registrationOf(one, counts), one.entry.id] }));
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
