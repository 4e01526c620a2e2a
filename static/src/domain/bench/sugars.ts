/** Sugars for priming. Twin of cellarapp/domain/bench/sugars.py. */
import type { Figures } from "../figures.ts";
import type { Asked } from "../inputs.ts";
import type { Working } from "../working.ts";

export const SUGAR_FIELDS = ["sugar", "solids_pct", "fermentable_pct"] as const;
export const YIELDS = ["full", "balling"] as const;
export const YIELD_WHY = "Full conversion, or Balling, which counts what the yeast grows on.";
const CO2_PER_HEXOSE = 2;

export type SugarName = keyof Figures["priming_sugars"]["value"];
export type Yield = (typeof YIELDS)[number];

/** The sugar, and for a syrup what its own sheet says of it. */
export interface SugarInputs {
  sugar?: SugarName | null;
  solids_pct?: number | null;
  fermentable_pct?: number | null;
}

/** Of one gram as weighed: dry extract, and fermentable sugar counted as hexose, in grams. */
export interface Sugar {
  name: SugarName;
  dryG: number;
  hexoseG: number;
}

/** The sugar asked for; syrups need what their own sheet says of them. */
export function askedSugar(work: Working, asked: Asked): Sugar {
  const table = work.figure("priming_sugars");
  const names = Object.keys(table) as SugarName[];
  const name = asked.choice("sugar", names, "The sugars that can be reckoned with.");
  const known = table[name];
  let dryG = (known.molar_mass_g - known.water_g) / known.molar_mass_g;
  let fermentable = 1;
  if (name === "invert_syrup" || name === "glucose_syrup") dryG = asked.number("solids_pct") / 100;
  if (name === "glucose_syrup") fermentable = asked.number("fermentable_pct") / 100;
  if (name === "malt_extract") {
    work.caution("malt_extract_is_estimate");
    dryG = 1 - work.setting("malt_extract_moisture_pct") / 100;
    fermentable = work.setting("malt_extract_fermentable_pct") / 100;
  }
  const anhydrousG = known.molar_mass_g - known.water_g;
  const hexose = work.figure("molar_masses_g").hexose;
  const perDry = (known.hexoses * hexose) / anhydrousG;
  return { name, dryG, hexoseG: dryG * fermentable * perDry };
}

/** Grams of CO2 from one gram of the sugar as weighed; malt extract always by Balling. */
export function co2PerGram(work: Working, sugar: Sugar, conversion: Yield): number {
  if (conversion === "balling" || sugar.name === "malt_extract") {
    const balling = work.figure("balling");
    const grams = (sugar.hexoseG * balling.co2_g) / balling.extract_g;
    const says = "CO2 from 1 g of sugar = hexose x k, k of Balling's balance";
    return work.step(says, grams, "g", 4);
  }
  const masses = work.figure("molar_masses_g");
  const grams = (sugar.hexoseG * CO2_PER_HEXOSE * masses.co2) / masses.hexose;
  const says = "CO2 from 1 g of sugar = hexose x 2 M(CO2) / M(hexose), full conversion";
  return work.step(says, grams, "g", 4);
}

/** Strength that so much sugar in a litre adds, by Balling. */
export function strengthRisePct(work: Working, sugar: Sugar, sugarGPerL: number): number {
  const alcoholG = (sugarGPerL * sugar.hexoseG) / work.figure("balling").extract_g;
  const rise = alcoholG / work.setting("ethanol_g_per_ml") / 10;
  return work.step("Rise in strength = hexose / b / d(ethanol) / 10", rise, "% vol", 3);
}
