/** LEFT: what is left in a cask, from a dip or its weight. Twin of cellarapp/domain/cellar/left.py. */
import { beerGPerMl } from "../bench/gravity.ts";
import { notAmong } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { numberIn } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { askedInside, fullMl, lyingMl, MEASURES, standingMl } from "./gauging.ts";
import { pints } from "./sediment.ts";

const LAID = ["lying", "standing"] as const;
const LAID_WHY = "A cask is dipped at the bung lying, or along its length standing on its head.";
const TILTED_WHY =
  "A dip at the bung holds only while the cask lies level: once it is tilted, weigh it or count " +
  "the pints.";

/** The three inside measures, or what the cask holds, or both. */
export interface DipInputs {
  wet_mm: number;
  tilted: boolean;
  laid?: (typeof LAID)[number] | null;
  bung_diameter_mm?: number | null;
  head_diameter_mm?: number | null;
  length_mm?: number | null;
  holds_ml?: number | null;
  sediment_ml?: number | null;
}

export interface WeightInputs {
  gross_g: number;
  tare_g: number;
  present_gravity: number;
  beer_temp_c: number;
  sediment_ml?: number | null;
}

/** LEFT-1: what is left, and without the sediment that stays behind. */
function drinkable(work: Working, leftMl: number, sedimentMl: number | null) {
  const left = halfUpWhole(Math.max(0, leftMl));
  const can = Math.max(0, left - halfUpWhole(sedimentMl ?? 0));
  work.step("Drinkable = left - sediment", can, "mL", 0);
  return {
    left_ml: left,
    left_pints: pints(left),
    drinkable_ml: can,
    drinkable_pints: pints(can),
  };
}

/** LEFT-2: litres and pints from the wet part of a dip rod; refused once the cask is tilted. */
export function leftByDip(inputs: DipInputs, settings: Settings | null = null) {
  const fields = ["wet_mm", "tilted", "laid", "holds_ml", "sediment_ml", ...MEASURES];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const laid = asked.has("laid") ? asked.choice("laid", LAID, LAID_WHY) : "lying";
  if (asked.flag("tilted", TILTED_WHY)) {
    throw notAmong({ field: "tilted", given: true, choices: [false], why: TILTED_WHY });
  }
  const { inside, scale } = askedInside(work, asked);
  const deepest = laid === "lying" ? inside.bungMm : inside.lengthMm;
  const why = "No deeper than the cask is inside.";
  const limit = halfUp(deepest, 1);
  const wetMm = Math.min(numberIn("wet_mm", asked.number("wet_mm"), 0, limit, "mm", why), deepest);
  const full = work.step("Full = pi L (2 R² + r²) / 3", fullMl(inside) * scale, "mL", 0);
  let leftMl: number;
  if (laid === "lying") {
    leftMl = lyingMl(inside, wetMm) * scale;
    work.step("Left = sum of circular segments along the cask", leftMl, "mL", 0);
    work.caution("dip_needs_level_cask");
  } else {
    leftMl = standingMl(inside, wetMm) * scale;
    const says = "Left = pi (R² h - (R² - r²) ((h - L/2)³ + (L/2)³) / (3 (L/2)²))";
    work.step(says, leftMl, "mL", 0);
  }
  const result = drinkable(work, leftMl, asked.maybeNumber("sediment_ml"));
  return work.done({ ...result, full_ml: halfUpWhole(full) });
}

/** LEFT-3: litres and pints from the weight of that container and its own tare. */
export function leftByWeight(inputs: WeightInputs, settings: Settings | null = null) {
  const fields = ["gross_g", "tare_g", "present_gravity", "beer_temp_c", "sediment_ml"];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const grossG = asked.number("gross_g");
  const why = "A container weighs no less than it does empty.";
  const tareG = numberIn("tare_g", asked.number("tare_g"), 0, grossG, "g", why);
  const gravity = asked.number("present_gravity");
  const density = beerGPerMl(work, gravity, asked.number("beer_temp_c"));
  work.step("Density of beer = gravity x density of water", density, "g/mL", 5);
  const leftMl = work.step("Left = (gross - tare) / density", (grossG - tareG) / density, "mL", 0);
  work.caution("weighed_in_air");
  return work.done(drinkable(work, leftMl, asked.maybeNumber("sediment_ml")));
}
