// From what was typed on the pad to a dip, and what would be odd about it. What is typed is what is
// left, in litres or pints, or how much of the dip rod came out wet, or what it weighs.

import { mostThatFitsMl } from "../../domain/containers.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { tryOut } from "../try-out.ts";
import { type Known, litres, litresAtMost, queryWords, typedMl } from "../words.ts";
import { pintsAsMl, wholePints } from "./pints.ts";
import { byWeight } from "./weighed.ts";
import { byWet, type Measured, wetMm } from "./wet.ts";

export type Unit = "litres" | "pints" | "mm" | "cm" | "upright" | "kg";

/** A keg has no bung to put a rod through; a cask has one in its head too, if it stands on it. */
export const unitsFor = ({ shape }: Standing): readonly Unit[] =>
  shape === "keg" ? ["litres", "pints", "kg"] : ["litres", "pints", "mm", "cm", "upright", "kg"];

/** The unit after that one, round and round. */
export const unitAfter = (unit: Unit, units: readonly Unit[]): Unit =>
  units[(units.indexOf(unit) + 1) % units.length] ?? "litres";

export interface Dip {
  left_ml: number | null;
  /** Why it cannot be recorded as it stands. */
  cannot: string | null;
  /** What a person would be asked about afterwards. */
  odd: string | null;
  /** The same amount in the other unit, so that a slip is seen before it is saved. */
  same: string;
  /** What rod or scales say, where it was one of them. */
  measured: Measured | null;
}

const toMl = (typed: string, unit: "litres" | "pints"): number | null =>
  unit === "litres" ? typedMl(typed) : pintsAsMl(typed);

const oddWords = (standing: Standing, left_ml: number, known: Known): string | null => {
  const deed = { kind: "dipped" as const, facts: { left_ml } };
  const [query] = tryOut(standing.number, standing, [deed], known.now).asked;
  return query === undefined ? null : queryWords(query, known);
};

const NONE = { left_ml: null, odd: null, same: "", measured: null };

const byRod = (
  typed: string,
  unit: "mm" | "cm" | "upright",
  standing: Standing,
  known: Known,
  settings: Settings,
): Measured | { cannot: string } => {
  const counted = unit === "cm" ? "cm" : "mm";
  const mm = wetMm(typed, counted);
  return mm === null
    ? { cannot: `Type how many ${counted} of the rod are wet.` }
    : byWet(mm, unit === "upright" ? "standing" : "lying", standing, known, settings);
};

const readMeasured = (
  typed: string,
  unit: "mm" | "cm" | "upright" | "kg",
  standing: Standing,
  known: Known,
  settings: Settings,
): Dip => {
  const measured =
    unit === "kg"
      ? byWeight(typed, standing, known, settings)
      : byRod(typed, unit, standing, known, settings);
  if ("cannot" in measured) return { ...NONE, cannot: measured.cannot };
  const { left_ml, drinkable_pints } = measured.worked.result;
  const same = `${litres(left_ml)}, ${Math.floor(drinkable_pints)} pints to sell above the sediment`;
  return { left_ml, cannot: null, odd: oddWords(standing, left_ml, known), same, measured };
};

const readLeft = (
  typed: string,
  unit: "litres" | "pints",
  standing: Standing,
  known: Known,
  settings: Settings,
): Dip => {
  const left_ml = typed === "" ? null : toMl(typed, unit);
  if (left_ml === null) return { ...NONE, cannot: `Type how many ${unit} are left.` };
  const same = unit === "litres" ? `${wholePints(left_ml)} pints` : litres(left_ml);
  const most = mostThatFitsMl(standing.capacity_ml, settings);
  return left_ml > most
    ? { ...NONE, left_ml, cannot: `It holds ${litresAtMost(most)} at most.`, same }
    : { ...NONE, left_ml, cannot: null, odd: oddWords(standing, left_ml, known), same };
};

export const readDip = (
  typed: string,
  unit: Unit,
  standing: Standing,
  known: Known,
  settings: Settings = {},
): Dip =>
  unit === "litres" || unit === "pints"
    ? readLeft(typed, unit, standing, known, settings)
    : readMeasured(typed, unit, standing, known, settings);
