/** Priming syrup and how to make the batch up. Twin of cellarapp/domain/bench/syrup.py. */
import { type Asked, wholeIn } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import type { Working } from "../working.ts";
import { extractGPerL } from "./gravity.ts";
import type { Sugar } from "./sugars.ts";

export const SYRUP_FIELDS = ["syrup_gravity", "syrup_g_per_l", "batch_ml"] as const;
const LARGEST_BATCH_ML = 1_000_000;

/** The syrup's gravity or its grams in a litre; neither for dry sugar. */
export interface SyrupInputs {
  syrup_gravity?: number | null;
  syrup_g_per_l?: number | null;
  batch_ml?: number | null;
}

/** The syrup that carries so much sugar, of which a litre holds so many grams. */
export function syrupMl(sugarG: number, syrupGPerL: number): number {
  return (sugarG / syrupGPerL) * 1000;
}

/** Grams of the sugar in a litre of the syrup asked for; none for dry sugar. */
export function askedSyrup(work: Working, asked: Asked, sugar: Sugar): number | null {
  if (asked.has("syrup_gravity")) {
    const dryG = extractGPerL(work, asked.number("syrup_gravity"));
    return work.step("Sugar in the syrup = 10 d P / dry part", dryG / sugar.dryG, "g/L", 1);
  }
  return asked.has("syrup_g_per_l") ? asked.number("syrup_g_per_l") : null;
}

function batchMl(work: Working, asked: Asked, neededMl: number): number {
  if (asked.has("batch_ml")) {
    const mostMl = Math.max(neededMl, LARGEST_BATCH_ML);
    const why = "The batch must be enough for what is to be primed.";
    return wholeIn(`${asked.at}batch_ml`, asked.inputs["batch_ml"], neededMl, mostMl, "mL", why);
  }
  const stepMl = work.setting("priming_batch_step_ml");
  return Math.ceil(halfUp(Math.ceil(halfUp(neededMl / stepMl, 6)) * stepMl, 6));
}

/** How to make it up: weigh the sugar, dissolve it, make up to the volume. */
export function batch(work: Working, asked: Asked, syrupGPerL: number, neededMl: number) {
  const madeMl = batchMl(work, asked, neededMl);
  work.caution("boil_priming_syrup");
  return {
    sugar_g_per_l: halfUp(syrupGPerL, 1),
    needed_ml: neededMl,
    batch_ml: madeMl,
    batch_sugar_g: halfUp((madeMl * syrupGPerL) / 1000, 1),
    left_ml: madeMl - neededMl,
    left_sugar_g: halfUp(((madeMl - neededMl) * syrupGPerL) / 1000, 1),
  };
}
