// Which full container stands in which list of the Cellar, and in what order.

import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { type Known, text } from "../words/known.ts";
import { fitOf } from "./fit.ts";
import { asFull, type Full, fitted, type Look } from "./full.ts";

export interface CellarLists {
  /** Can go on the stillage or out now; the one with the least time left first. */
  ready: Full[];
  /** Still conditioning; the one that will be ready first comes first. */
  later: Full[];
  /** On the stillage; what can be sold first comes first. */
  stillage: Full[];
  look: Full[];
}

/** After every day there is: what has no best-before day keeps longest. */
const LAST_DAY = "9999";
const FIRST_LOOKED_AT: readonly Look[] = ["held", "past", "near", "query"];

type Key = (full: Full) => string;

const bestBefore: Key = (full) => full.ready.best_before ?? LAST_DAY;
const readyAt: Key = (full) => full.ready.ready_at ?? "";
const soldFrom: Key = (full) =>
  full.fit()?.result.ready_from_at ?? full.standing.serving?.stillaged?.since ?? "";
const lookFirst: Key = (full) =>
  full.look === null ? "" : `${FIRST_LOOKED_AT.indexOf(full.look)}${bestBefore(full)}`;

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const racked: Key = (full) => full.contents.since;
const number: Key = (full) => full.standing.number.padStart(8, "0");

/** Each key is worked out once, not once for each comparison: there may be thousands. */
const sorted = (fulls: readonly Full[], ...keys: Key[]): Full[] =>
  fulls
    .map((full) => [[...keys, racked, number].map((key) => key(full)).join(" "), full] as const)
    .sort(([a], [b]) => compare(a, b))
    .map(([, full]) => full);

export const allFull = (
  containers: Iterable<Standing>,
  known: Known,
  settings: Settings = {},
): Full[] => {
  const found: Full[] = [];
  for (const standing of containers) {
    const full = asFull(standing, known);
    if (full === null) continue;
    found.push(fitted(full, settings, known.now, () => fitOf(standing, known, settings)));
  }
  return found;
};

/** The lists for one beer, or for all with null. What is to be looked at stands in one list only. */
export const cellarLists = (fulls: readonly Full[], beer: string | null): CellarLists => {
  const wanted = beer === null ? [...fulls] : fulls.filter((full) => full.beer === beer);
  const plain = wanted.filter((full) => full.look === null);
  const at = (stage: string) => plain.filter((full) => full.ready.stage === stage);
  return {
    ready: sorted(at("ready"), bestBefore, readyAt),
    later: sorted(at("conditioning"), readyAt),
    stillage: sorted([...at("stillaged"), ...at("working"), ...at("on_sale")], soldFrom),
    look: sorted(
      wanted.filter((full) => full.look !== null),
      lookFirst,
    ),
  };
};

export interface BeerCount {
  beer: string;
  name: string;
  count: number;
}

/** The beers that are in the cellar, by name, for the buttons that choose one of them. */
export const beersIn = (fulls: readonly Full[], known: Known): BeerCount[] => {
  const counts = new Map<string, number>();
  for (const { beer } of fulls) counts.set(beer, (counts.get(beer) ?? 0) + 1);
  return [...counts]
    .map(([beer, count]) => ({
      beer,
      count,
      name: text(known.beers.get(beer), "name") || "Beer not known here",
    }))
    .sort((a, b) => compare(a.name, b.name));
};
