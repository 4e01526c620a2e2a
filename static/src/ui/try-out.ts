// What an entry would do, tried on the standing before it is made: the same step that the brewery
// takes later. So what the bench warns of is what the ledger would ask about.

import type { Facts, Kind } from "../domain/entries.ts";
import { unsent } from "../domain/entries.ts";
import { step } from "../domain/fold.ts";
import { blank, type Query, type Standing } from "../domain/standing.ts";

export interface Outcome {
  before: Standing;
  after: Standing;
  /** Steps that nobody noted and that the entry implies: "returned", "emptied" … */
  inferred: string[];
  /** What a person would be asked about afterwards. */
  asked: Query[];
}

export interface Deed {
  kind: Kind;
  facts: Facts;
}

export const tryOut = (
  number: string,
  standing: Standing | null,
  deeds: Deed[],
  now: string,
): Outcome => {
  const before = standing ?? blank(number);
  const inferred: string[] = [];
  let after = before;
  for (const [at, deed] of deeds.entries()) {
    const made = { id: `tried-${at}`, device: "", seq: at + 1, person: "", rules: 0 };
    const taken = step(after, unsent({ ...made, ...deed, subject: number, happened_at: now }));
    after = taken.standing;
    inferred.push(...taken.inferred);
  }
  const known = new Set(before.queries.map((query) => query.id));
  return { before, after, inferred, asked: after.queries.filter((query) => !known.has(query.id)) };
};
