/** Priming sugar for a racking, and what follows. Twin of cellarapp/domain/bench/primings.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import {
  askedSources,
  EXTRACT_FIELDS,
  type ExtractInputs,
  RESIDUAL_FIELDS,
  type ResidualInputs,
  type Sources,
} from "./co2.ts";
import { askedFillings, type Filling, inAll } from "./fillings.ts";
import { askedSealed, SEALED_FIELDS, type SealedInputs } from "./pressure.ts";
import {
  askedSugar,
  co2PerGram,
  SUGAR_FIELDS,
  type SugarInputs,
  strengthRisePct,
  YIELD_WHY,
  YIELDS,
  type Yield,
} from "./sugars.ts";
import { askedSyrup, batch, SYRUP_FIELDS, type SyrupInputs, syrupMl } from "./syrup.ts";

const FIELDS = [
  "target_vol",
  "yield",
  "containers",
  ...RESIDUAL_FIELDS,
  ...EXTRACT_FIELDS,
  ...SUGAR_FIELDS,
  ...SYRUP_FIELDS,
  ...SEALED_FIELDS,
];

export interface PrimingsInputs
  extends ResidualInputs,
    ExtractInputs,
    SugarInputs,
    SyrupInputs,
    SealedInputs {
  target_vol: number;
  yield: Yield;
  containers: Filling[];
}

/** Why a beer needs no sugar: what it holds, or what its own extract will give, is enough. */
export type NoSugar = "residual" | "remaining_extract";

/** CO2 that sugar has to give, and why none where the beer brings enough by itself. */
export function neededVol(
  work: Working,
  targetVol: number,
  sources: Sources,
): { vol: number; whyNone: NoSugar | null } {
  const needed = targetVol - sources.residualVol - sources.fromExtractVol;
  work.step("CO2 from sugar = target - left - to come", Math.max(0, needed), "vol", 3);
  if (needed > 0) return { vol: needed, whyNone: null };
  if (sources.residualVol >= targetVol) return { vol: 0, whyNone: "residual" };
  work.caution("extract_overshoots");
  return { vol: 0, whyNone: "remaining_extract" };
}

/** The dose for one container of each row. */
function rows(fillings: Filling[], sugarGPerL: number, syrupGPerL: number | null) {
  return fillings.map((filling) => {
    const grams = (sugarGPerL * filling.volume_ml) / 1000;
    return {
      ...filling,
      sugar_g: halfUp(grams, 1),
      syrup_ml: syrupGPerL === null ? null : halfUpWhole(syrupMl(grams, syrupGPerL)),
    };
  });
}

/** PRIME-1: sugar that brings the beer to its target once it has fermented. */
export function primings(inputs: PrimingsInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, FIELDS);
  const work = new Working(settings);
  const target = asked.number("target_vol");
  const conversion = asked.choice("yield", YIELDS, YIELD_WHY);
  const fillings = askedFillings(asked);
  const sources = askedSources(work, asked);
  const { vol: needed, whyNone } = neededVol(work, target, sources);
  const sugar = askedSugar(work, asked);
  const grams = (needed * work.figure("co2_g_per_l_per_vol")) / co2PerGram(work, sugar, conversion);
  work.step("Sugar = CO2 from sugar x g/L for one volume / CO2 from 1 g", grams, "g/L", 3);
  const syrup = askedSyrup(work, asked, sugar);
  const doses = rows(fillings, grams, syrup);
  const drawn = (dose: (row: (typeof doses)[number]) => number) => inAll(fillings, doses.map(dose));
  const neededMl = drawn((row) => row.syrup_ml ?? 0);
  const made = syrup === null ? null : batch(work, asked, syrup, neededMl);
  const totalG =
    syrup === null ? drawn((row) => row.sugar_g) : halfUp((neededMl * syrup) / 1000, 1);
  work.step("For the whole racking = sum of count x dose", totalG, "g", 1);
  const finalVol = sources.residualVol + sources.fromExtractVol + needed;
  return work.done({
    residual_vol: halfUp(sources.residualVol, 3),
    from_extract_vol: halfUp(sources.fromExtractVol, 3),
    needed_vol: halfUp(needed, 3),
    no_sugar_because: whyNone,
    yield: sugar.name === "malt_extract" ? "balling" : conversion,
    sugar_g_per_l: halfUp(grams, 3),
    containers: doses,
    total_sugar_g: totalG,
    syrup: made,
    strength_rise_pct: halfUp(strengthRisePct(work, sugar, grams), 2),
    dilution_pct: syrup === null ? 0 : halfUp(syrupMl(grams, syrup) / 10, 2),
    final_vol: halfUp(finalVol, 3),
    pressure: askedSealed(work, asked, finalVol),
  });
}
