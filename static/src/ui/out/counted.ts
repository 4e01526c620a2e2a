// Empties that were only counted at a door: still to be told by number in the yard. Until they are,
// the records have them with the customer.

import { londonDate } from "../../domain/calendar.ts";
import type { Drop } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import type { Draft } from "../../store/saving.ts";
import { count, dateWords } from "../words.ts";

type Drops = ReadonlyMap<string, Drop>;

/** A drop some of whose counted empties nobody has told by number yet. */
export interface OpenCount {
  drop: string;
  at: string;
  counted: number;
  matched: readonly string[];
}

/** Of one customer, the longest ago first. */
export const openCounts = (drops: Drops, customer: string): OpenCount[] =>
  [...drops]
    .flatMap(([drop, { fields }]) => {
      const { empties_counted: counted = 0, matched = [], handed_over_at: at } = fields;
      const closed = fields.retired === true || fields.count_closed === true;
      const open = fields.customer === customer && !closed && counted > matched.length;
      return open && at !== undefined ? [{ drop, at, counted, matched }] : [];
    })
    .sort((a, b) => (a.at < b.at ? -1 : 1));

/** The count that a container belongs to that comes back now: it was there before that drop. */
const countOf = (standing: Standing, counts: readonly OpenCount[]): OpenCount | undefined =>
  counts.find(
    ({ at, counted, matched }) =>
      standing.trip !== null && standing.trip.since < at && matched.length < counted,
  );

/** What is recorded of counts beside the return of containers, as they stand before it. */
export const matchDrafts = (standings: readonly (Standing | null)[], drops: Drops): Draft[] => {
  const counts = new Map<string, OpenCount[]>();
  const changed = new Set<OpenCount>();
  for (const standing of standings) {
    const customer = standing?.trip?.customer;
    if (standing === null || customer === undefined) continue;
    const open = counts.get(customer) ?? openCounts(drops, customer).map((one) => ({ ...one }));
    counts.set(customer, open);
    const one = countOf(standing, open);
    if (one === undefined) continue;
    one.matched = [...one.matched, standing.number];
    changed.add(one);
  }
  return [...changed].map(({ drop, matched }) => ({
    kind: "drop",
    subject: drop,
    facts: { matched },
  }));
};

/** "One of 6 that were only counted on 20 Nov."; nothing where it is none of them. */
export const countedWords = (standing: Standing | null, drops: Drops, now: string): string => {
  const customer = standing?.trip?.customer;
  if (standing === null || customer === undefined) return "";
  const one = countOf(standing, openCounts(drops, customer));
  if (one === undefined) return "";
  const day = dateWords(londonDate(one.at), now);
  return one.counted === 1
    ? `The one that was only counted on ${day}.`
    : `One of ${one.counted} that were only counted on ${day}.`;
};

/** "6 empties were taken along on 20 Nov and only counted: 4 are still to be told by number." */
export const openWords = ({ at, counted, matched }: OpenCount, now: string): string => {
  const taken = `${count(counted, "empty was", "empties were")} taken along on ${dateWords(londonDate(at), now)}`;
  const left = counted - matched.length;
  return `${taken} and only counted: ${left} ${left === 1 ? "is" : "are"} still to be told by number.`;
};
