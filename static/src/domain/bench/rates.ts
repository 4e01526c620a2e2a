/** Finings and cask hops by rate. Twin of cellarapp/domain/bench/rates.py. */
import type { Settings } from "../figures.ts";
import { Asked, numberIn } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { askedFillings, type Filling, inAll } from "./fillings.ts";
import { barrelMl, mlPerLFromPints, OUNCE_G } from "./units.ts";

export const FININGS_UNITS = [
  "pints_per_barrel",
  "ml_per_l",
  "ml_per_hl",
  "ml_per_container",
] as const;
export const HOPS_UNITS = ["oz_per_barrel", "g_per_hl", "g_per_container"] as const;
const UNIT_WHY = "How the rate is written.";
const MOST_ML_PER_L = 50;
const MOST_G_PER_HL = 2000;

export type FiningsProduct = "isinglass" | "auxiliary";
export type FiningsUnit = (typeof FININGS_UNITS)[number];
export type HopsUnit = (typeof HOPS_UNITS)[number];

/** A rate in its unit; a rate for a container says of how many millilitres. */
export interface RateInputs<Unit> {
  rate: number;
  rate_unit: Unit;
  per_ml?: number | null;
  containers: Filling[];
}

/** The rate asked about, in mL or g for a litre; for a container its volume is asked too. */
function askedPerL(asked: Asked, units: readonly (FiningsUnit | HopsUnit)[]): number {
  const rate = asked.number("rate");
  const unit = asked.choice("rate_unit", units, UNIT_WHY);
  if (unit === "pints_per_barrel") return mlPerLFromPints(rate);
  if (unit === "oz_per_barrel") return (rate * OUNCE_G * 1000) / barrelMl();
  if (unit === "ml_per_container" || unit === "g_per_container") {
    return (rate * 1000) / asked.number("per_ml");
  }
  return unit === "ml_per_hl" || unit === "g_per_hl" ? rate / 100 : rate;
}

/** FINE-1: finings for each container, to the mL, and in all, with the rate in every usual unit. */
export function finingsDose(
  inputs: RateInputs<FiningsUnit> & { product: FiningsProduct },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["product", "rate", "rate_unit", "per_ml", "containers"]);
  const work = new Working(settings);
  const table = work.figure("finings_rates");
  const products = Object.keys(table) as FiningsProduct[];
  const product = asked.choice("product", products, "Isinglass, or auxiliary finings.");
  const why = "More than any finings are used at.";
  const asRate = askedPerL(asked, FININGS_UNITS);
  const perL = numberIn("rate", asRate, 0, MOST_ML_PER_L, "mL/L", why);
  work.step("Rate for a litre; 1 pint per barrel = 1000 / 288 mL/L", perL, "mL/L", 3);
  const pints = halfUp(perL / mlPerLFromPints(1), 3);
  if (pints < table[product].low || pints > table[product].high) {
    work.caution("finings_rate_unusual");
  }
  const fillings = askedFillings(asked);
  const doses = fillings.map(({ volume_ml }) => halfUpWhole((perL * volume_ml) / 1000));
  const total = work.step("In all = sum of count x dose", inAll(fillings, doses), "mL", 0);
  return work.done({
    ml_per_l: halfUp(perL, 3),
    ml_per_hl: halfUp(perL * 100, 1),
    pints_per_barrel: halfUp(pints, 2),
    containers: fillings.map((filling, n) => ({ ...filling, dose_ml: doses[n] ?? 0 })),
    total_ml: total,
  });
}

/** FINE-2: hops for each cask and in all. */
export function caskHops(inputs: RateInputs<HopsUnit>, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["rate", "rate_unit", "per_ml", "containers"]);
  const work = new Working(settings);
  const why = "More than any cask is hopped with.";
  const perL = askedPerL(asked, HOPS_UNITS);
  const perHl = numberIn("rate", perL * 100, 0, MOST_G_PER_HL, "g/hL", why);
  work.step("Rate for a hectolitre; 1 oz per barrel = 17.32 g/hL", perHl, "g/hL", 2);
  const ounces = halfUp((perL * barrelMl()) / 1000 / OUNCE_G, 3);
  warnOfHops(work, perHl, ounces);
  const fillings = askedFillings(asked);
  const doses = fillings.map(({ volume_ml }) => halfUp((perL * volume_ml) / 1000, 1));
  const total = work.step("In all = sum of count x dose", inAll(fillings, doses), "g", 1);
  return work.done({
    g_per_hl: halfUp(perHl, 2),
    oz_per_barrel: halfUp(ounces, 2),
    containers: fillings.map((filling, n) => ({ ...filling, dose_g: doses[n] ?? 0 })),
    total_g: total,
  });
}

function warnOfHops(work: Working, perHl: number, ounces: number): void {
  const usual = work.figure("cask_hops");
  if (perHl > 0) work.caution("hops_may_add_co2");
  if (halfUp(perHl, 3) >= work.setting("cask_hops_clog_g_per_hl")) work.caution("hops_clog_tap");
  else if (ounces > usual.high) work.caution("hops_beyond_published");
  else if (ounces > 0 && (ounces > usual.usual_high || ounces < usual.usual_low)) {
    work.caution("hops_rate_unusual");
  }
}
