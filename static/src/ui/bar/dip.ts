// From what was typed on the pad to a dip, and what would be odd about it.

import { mostThatFitsMl } from "../../domain/containers.ts";
import type { Standing } from "../../domain/standing.ts";
import { tryOut } from "../try-out.ts";
import { type Known, litres, litresAtMost, queryWords, typedMl } from "../words.ts";
import { pintsAsMl, wholePints } from "./pints.ts";

export type Unit = "litres" | "pints";

export interface Dip {
  left_ml: number | null;
  /** Why it cannot be recorded as it stands. */
  cannot: string | null;
  /** What a person would be asked about afterwards. */
  odd: string | null;
  /** The same amount in the other unit, so that a slip is seen before it is saved. */
  same: string;
}

const toMl = (typed: string, unit: Unit): number | null =>
  unit === "litres" ? typedMl(typed) : pintsAsMl(typed);

const oddWords = (standing: Standing, left_ml: number, known: Known): string | null => {
  const deed = { kind: "dipped" as const, facts: { left_ml } };
  const [query] = tryOut(standing.number, standing, [deed], known.now).asked;
  return query === undefined ? null : queryWords(query, known);
};

export const readDip = (typed: string, unit: Unit, standing: Standing, known: Known): Dip => {
  const left_ml = typed === "" ? null : toMl(typed, unit);
  if (left_ml === null) {
    return { left_ml, cannot: `Type how many ${unit} are left.`, odd: null, same: "" };
  }
  const same = unit === "litres" ? `${wholePints(left_ml)} pints` : litres(left_ml);
  const most = mostThatFitsMl(standing.capacity_ml);
  return left_ml > most
    ? { left_ml, cannot: `It holds ${litresAtMost(most)} at most.`, odd: null, same }
    : { left_ml, cannot: null, odd: oddWords(standing, left_ml, known), same };
};
