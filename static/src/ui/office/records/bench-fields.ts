// What the bench has to know of a beer and of a gyle before it can say a dose. Seldom changed, so
// each set stands behind one word in its form.

import { figure } from "../../../domain/figures.ts";
import { RANGES } from "../../../domain/inputs.ts";
import { sentence } from "../../words/amounts.ts";
import type { FieldSpec } from "./specs.ts";

const DOSES = "Doses";
const LABEL = "Label";
const MEASURED = "Measured at racking";

const SUGARS = Object.entries(figure("priming_sugars"));

const rate = (name: string, label: string, unit: string, most: number): FieldSpec => ({
  is: "whole",
  group: DOSES,
  name,
  label: `${label}, ${unit}`,
  least: 0,
  most,
  unit,
});

const gravity = (group: string, name: string, label: string, hint: string) => ({
  is: "gravity" as const,
  group,
  name,
  label,
  hint,
  least: 9000,
  most: 13_000,
});

const ofSugar = (name: string, label: string, hint: string): FieldSpec => ({
  is: "scaled",
  group: DOSES,
  name,
  label,
  hint,
  per: 10,
  least: 10,
  most: 1000,
});

const measured = (
  name: string,
  label: string,
  [per, most]: readonly [number, number],
  hint?: string,
): FieldSpec => ({
  is: "scaled",
  group: MEASURED,
  name,
  label,
  per,
  least: 0,
  most,
  ...(hint === undefined ? {} : { hint }),
});

export const BEER_DOSES: readonly FieldSpec[] = [
  {
    is: "scaled",
    group: DOSES,
    name: "target_co2_centivols",
    label: "CO2 wanted in the container, volumes",
    hint: `Cask beer is often near ${figure("cask_target_vol")}.`,
    per: 100,
    least: 0,
    most: 600,
  },
  {
    is: "choice",
    list: true,
    group: DOSES,
    name: "priming_sugar",
    label: "Priming sugar",
    options: [
      { value: "none", label: "None" },
      ...SUGARS.map(([value, { name }]) => ({ value, label: name })),
    ],
  },
  {
    is: "choice",
    group: DOSES,
    name: "priming_yield",
    label: "How sugar is reckoned",
    hint: "In full, or by Balling, who counts what the yeast grows on: that asks for more sugar.",
    options: [
      { value: "full", label: "In full" },
      { value: "balling", label: "Balling" },
    ],
  },
  ofSugar(
    "sugar_solids_tenths",
    "Solids of the sugar, %",
    "For invert and glucose syrup as bought: read its own sheet.",
  ),
  ofSugar(
    "sugar_fermentable_tenths",
    "Fermentable part of its solids, %",
    "For glucose syrup: read its own sheet.",
  ),
  {
    is: "whole",
    group: DOSES,
    name: "syrup_g_per_l",
    label: "Sugar in the priming syrup, g/L",
    hint: "Left empty, and its gravity too, sugar is weighed into each container.",
    least: RANGES.syrup_g_per_l.low,
    most: RANGES.syrup_g_per_l.high,
    unit: "g/L",
  },
  {
    ...gravity(
      DOSES,
      "syrup_gravity_e4",
      "Or gravity of the priming syrup",
      "As 1.1500. Counts in place of grams in a litre.",
    ),
    least: RANGES.syrup_gravity.low * 10_000,
    most: RANGES.syrup_gravity.high * 10_000,
  },
  {
    is: "scaled",
    group: DOSES,
    name: "keg_co2_centivols",
    label: "CO2 wanted in a keg, volumes",
    hint: "Kegs are then carbonated: no sugar, no finings, the pressure at the bench. Left empty, kegs are primed as casks are.",
    per: 100,
    least: RANGES.keg_vol.low * 100,
    most: RANGES.keg_vol.high * 100,
  },
  gravity(
    DOSES,
    "limit_gravity_e4",
    "Attenuation limit, gravity",
    "As 1.0080, from a forced test.",
  ),
  {
    is: "choice",
    group: DOSES,
    name: "auxiliary",
    label: "Auxiliary finings",
    options: [
      { value: "none", label: "None" },
      { value: "auxiliary_alginate", label: "Alginate" },
      { value: "auxiliary_silica", label: "Silica" },
    ],
  },
  rate("auxiliary_ml_per_hl", "Auxiliary", "mL/hL", 5000),
  rate("isinglass_ml_per_hl", "Isinglass", "mL/hL", 5000),
  rate("hops_g_per_hl", "Hops in the cask", "g/hL", 2000),
];

export const BEER_LABEL: readonly FieldSpec[] = [
  { is: "yes", group: LABEL, name: "vegan", label: "Sold as vegan" },
  {
    is: "several",
    group: LABEL,
    name: "cereals",
    label: "Cereals",
    options: figure("label_cereals").map((value) => ({ value, label: sentence(value) })),
  },
  { is: "yes", group: LABEL, name: "milk", label: "Holds milk, such as lactose" },
];

export const GYLE_MEASURED: readonly FieldSpec[] = [
  gravity(MEASURED, "original_gravity_e4", "Original gravity", "As 1.0420."),
  gravity(MEASURED, "present_gravity_e4", "Gravity now", "As 1.0110, at racking."),
  measured(
    "highest_temp_decidegc",
    "Warmest since fermentation ended, °C",
    [10, 500],
    "It decides how much CO2 has stayed in the beer.",
  ),
  measured(
    "measured_co2_centivols",
    "CO2 as measured, volumes",
    [100, 600],
    "Counts in place of the temperature.",
  ),
  measured(
    "loss_ml",
    "Litres to leave behind",
    [1000, 100_000_000],
    "Lees and what a pump misses.",
  ),
  measured("yeast_thousands_per_ml", "Yeast, million cells in a mL", [1000, 1_000_000]),
  measured("ph_hundredths", "pH", [100, 1400]),
  measured("fining_temp_decidegc", "Temperature at fining, °C", [10, 500]),
  measured("sulphite_decimg_per_l", "Sulphite as SO2, mg/L", [10, 10_000]),
];
