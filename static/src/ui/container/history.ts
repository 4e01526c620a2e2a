// The whole history of a container: from the brewery when it answers, otherwise what this phone
// noted itself. Which of the two it is, is said.

import type { MadeEntry } from "../../domain/entries.ts";
import { book, type OwnEntry } from "../../store/book.ts";
import { overFetch } from "../../sync/transport.ts";

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

/** A person waits for this one, and what the phone has itself stands there already. */
const PATIENCE_MS = 10_000;
const brewery = overFetch("", PATIENCE_MS);

const isTold = (one: unknown): one is Told =>
  typeof one === "object" && one !== null && "id" in one && "kind" in one && "facts" in one;

/** What the brewery tells; null where it cannot be asked. It knows nothing of a new number. */
export const ask = async (number: string): Promise<readonly Told[] | null> => {
  try {
    const { status, body } = await brewery({ path: `/api/containers/${number}` });
    if (status === 404) return [];
    const entries: unknown = (body as { entries?: unknown } | undefined)?.entries;
    return status === 200 && Array.isArray(entries) ? entries.filter(isTold) : null;
  } catch {
    return null; // no answer is an ordinary state here; the page says whose entries it shows
  }
};

const own = (number: string): OwnEntry[] =>
  book.ownEntries.value.filter(
    ({ entry }) => entry.subject === number || entry.facts["to"] === number,
  );

const fromOwn = (one: OwnEntry): Line => ({
  entry: one.entry,
  at: one.entry.happened_at,
  countsFor: one.entry.subject,
  undone: one.undone,
  where: one.where,
});

const fromTold = (one: Told, undoneHere: ReadonlySet<string>): Line => ({
  entry: one,
  at: one.effective_at,
  countsFor: one.counts_for,
  undone: one.dropped_by !== null || undoneHere.has(one.id),
  where: "brewery",
});

/** The newest first. What the brewery tells and what still waits here, each once. */
export const historyOf = (number: string, told: readonly Told[] | null): Line[] => {
  const mine = own(number);
  const undoneHere = new Set(mine.filter((one) => one.undone).map((one) => one.entry.id));
  const known = new Set(told?.map(({ id }) => id));
  const lines = [
    ...(told ?? []).map((one) => fromTold(one, undoneHere)),
    ...mine.filter(({ entry }) => !known.has(entry.id)).map(fromOwn),
  ];
  const key = ({ at, entry }: Line): string => `${at}/${String(entry.seq).padStart(10, "0")}`;
  return lines.sort((a, b) => (key(a) < key(b) ? 1 : -1));
};
