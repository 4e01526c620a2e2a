// The text to whom strays belong: theirs together, and what the names in it stand for.

import { count } from "../words.ts";
import type { From } from "./call-text.ts";
import { byKindWords } from "./reasons.ts";
import { folded, type Stray } from "./strays.ts";

/** The strays of one owner: they go home together. */
export interface Owned {
  owner: string;
  strays: Stray[];
}

/** By owner, who may be written in several ways; whose are longest here first. */
export const byOwner = (all: readonly Stray[]): Owned[] => {
  const owners = new Map<string, Owned>();
  for (const stray of all) {
    const there = owners.get(folded(stray.owner));
    if (there) there.strays.push(stray);
    else owners.set(folded(stray.owner), { owner: stray.owner, strays: [stray] });
  }
  return [...owners.values()];
};

const daysWords = (days: number): string => (days === 0 ? "less than a day" : count(days, "day"));

/** What the names in the text to an owner stand for. */
export const namesFor = (
  { owner, strays: theirs }: Owned,
  { address, ...from }: From & { address: string },
) => ({
  owner,
  containers: byKindWords(theirs),
  numbers: theirs.map(({ standing }) => standing.number).join(", "),
  longest: daysWords(Math.max(...theirs.map(({ days }) => days))),
  address,
  person: from.person,
  brewery: from.brewery || from.person,
});
