// From the weight of a container to what is left in it: tilted or not, cask or keg.

import { leftByWeight } from "../../domain/cellar/left.ts";
import { DomainError } from "../../domain/errors.ts";
import { type Settings, setting } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import type { Known } from "../words.ts";

import { sedimentMl } from "./sediment.ts";
import type { Measured } from "./wet.ts";

const NO_TARE =
  "Its weight when empty is not on record. Note it on its own page, or type what is left.";
const NO_GRAVITY =
  "The gravity of its gyle is not entered, so its weight says nothing. Type litres.";
const PER_GRAVITY = 10_000;

/** Typed kilograms with up to two decimals, in grams; null where they are no such figure. */
const grams = (typed: string): number | null => {
  const clean = typed.trim();
  return /^\d{1,3}(\.\d{0,2})?$/.test(clean) ? Math.floor(Number(clean) * 1000 + 0.5) : null;
};

/** What is left, or why the scales cannot say. The beer is taken to be at the cellar's temperature. */
export const byWeight = (
  typed: string,
  standing: Standing,
  known: Known,
  settings: Settings,
): Measured | { cannot: string } => {
  const { contents, tare_g } = standing;
  const gross_g = grams(typed);
  if (gross_g === null) return { cannot: "Type how many kilograms it weighs." };
  if (tare_g === null) return { cannot: NO_TARE };
  const gravity = known.gyles.get(contents?.gyle ?? "")?.fields.present_gravity_e4;
  if (gravity === undefined) return { cannot: NO_GRAVITY };
  const present_gravity = gravity / PER_GRAVITY;
  const beer_temp_c = setting("cellar_temp_c", settings);
  const inputs = { gross_g, tare_g, present_gravity, beer_temp_c };
  try {
    const sediment_ml = sedimentMl(standing, known, settings);
    const worked = leftByWeight({ ...inputs, sediment_ml }, settings);
    const by = `By weight, ${tare_g / 1000} kg of it the container's own, with beer of ${present_gravity.toFixed(4)} at ${beer_temp_c} °C.`;
    return { worked, by, facts: {} };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    return {
      cannot: `It weighs ${tare_g / 1000} kg empty, and no less than that with beer in it.`,
    };
  }
};
