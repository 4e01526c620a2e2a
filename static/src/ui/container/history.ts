// The whole history of a container: from the brewery when it answers, otherwise what this phone
// noted itself. Which of the two it is, is said.

import type { MadeEntry } from "../../domain/entries.ts";
import type { OwnEntry } from "../../store/book.ts";

export interface Told extends MadeEntry {
  effective_at: string;
  /** The number that it counts for; another one after "wrong number", null when undone. */
  counts_for: string | null;
  dropped_by: string | null;
}

export interface Line {
  entry: MadeEntry;
  at: string;
  countsFor: string | null;
  undone: boolean;
  where: OwnEntry["where"];
}

const about = (number: string, own: readonly OwnEntry[]): OwnEntry[] =>
  own.filter(({ entry }) => entry.subject === number || entry.facts["to"] === number);

/** What this phone has put right since, which the brewery may not have worked out yet. */
interface Corrected {
  undone: ReadonlySet<string>;
  movedTo: ReadonlyMap<string, string>;
}

const correctedIn = (own: readonly OwnEntry[]): Corrected => {
  const undone = new Set<string>();
  const movedTo = new Map<string, string>();
  // Own entries come with the newest first; the last correction stands.
  for (const { entry, undone: dropped } of [...own].reverse()) {
    if (dropped) continue;
    if (entry.kind === "voided") undone.add(entry.facts["target"]);
    if (entry.kind === "renumbered") movedTo.set(entry.facts["target"], entry.facts["to"]);
  }
  return { undone, movedTo };
};

const fromOwn = (one: OwnEntry, { movedTo }: Corrected): Line => ({
  entry: one.entry,
  at: one.entry.happened_at,
  countsFor: movedTo.get(one.entry.id) ?? one.entry.subject,
  undone: one.undone,
  where: one.where,
});

const fromTold = (one: Told, { undone, movedTo }: Corrected): Line => ({
  entry: one,
  at: one.effective_at,
  countsFor: movedTo.get(one.id) ?? one.counts_for,
  undone: one.dropped_by !== null || undone.has(one.id),
  where: "brewery",
});

/** The newest first. What the brewery tells and what still waits here, each once. */
export const historyOf = (
  number: string,
  told: readonly Told[] | null,
  own: readonly OwnEntry[],
): Line[] => {
  const mine = about(number, own);
  const corrected = correctedIn(own);
  const known = new Set(told?.map(({ id }) => id));
  const lines = [
    ...(told ?? []).map((one) => fromTold(one, corrected)),
    ...mine.filter(({ entry }) => !known.has(entry.id)).map((one) => fromOwn(one, corrected)),
  ];
  const key = ({ at, entry }: Line): string => `${at}/${String(entry.seq).padStart(10, "0")}`;
  return lines.sort((a, b) => (key(a) < key(b) ? 1 : -1));
};
