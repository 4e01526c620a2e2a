/** SED: beer that stays in the cask because it cannot be drunk. Twin of cellarapp/domain/cellar/sediment.py. */
import { pintMl } from "../bench/units.ts";
import { CONTAINER_KINDS } from "../containers.ts";
import type { Settings } from "../figures.ts";
import { choiceOf } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";

const KIND_WHY = "One of the kinds of container that the brewery keeps.";

export interface SedimentInputs {
  kind: string;
  holds_ml?: number | null;
  sediment_ml?: number | null;
}

/** Imperial pints, to a tenth. */
export const pints = (volumeMl: number): number => halfUp(volumeMl / pintMl(), 1);

/** SED-1: the beer's own for that size; what is published for it; or in proportion. */
export function sedimentOf(
  work: Working,
  kind: string,
  holdsMl: number,
  ownMl: number | null,
): number {
  const shown = (says: string, value: number) => halfUpWhole(work.step(says, value, "mL", 0));
  if (ownMl !== null) return shown("Sediment: the beer's own for this size", ownMl);
  if (CONTAINER_KINDS[kind]?.shape === "keg") {
    return shown("Sediment: in a keg", work.setting("keg_sediment_ml"));
  }
  work.caution("sediment_measure_your_own");
  const known: Record<string, number> & { firkin: number } = work.figure("sediment_ml");
  const published = known[kind];
  if (published !== undefined) return shown("Sediment: as published", published);
  work.caution("sediment_by_proportion");
  const share = known.firkin / (CONTAINER_KINDS["firkin"]?.capacity_ml ?? 1);
  return shown("Sediment: a firkin's, by size", share * holdsMl);
}

/** SED-2: sediment and what can be sold of a full container, litres and pints. */
export function sediment(inputs: SedimentInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["kind", "holds_ml", "sediment_ml"]);
  const work = new Working(settings);
  const kind = choiceOf("kind", asked.given["kind"], Object.keys(CONTAINER_KINDS), KIND_WHY);
  const usualMl = CONTAINER_KINDS[kind]?.capacity_ml ?? null;
  const holdsMl = asked.has("holds_ml") || usualMl === null ? asked.number("holds_ml") : usualMl;
  const leftBehind = sedimentOf(work, kind, holdsMl, asked.maybeNumber("sediment_ml"));
  const saleable = Math.max(0, holdsMl - leftBehind);
  work.step("Saleable = full - sediment", saleable, "mL", 0);
  return work.done({
    holds_ml: holdsMl,
    sediment_ml: leftBehind,
    sediment_pints: pints(leftBehind),
    saleable_ml: saleable,
    saleable_pints: pints(saleable),
  });
}
