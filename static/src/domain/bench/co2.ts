/** CO2 in the beer before anything is added. Twin of cellarapp/domain/bench/co2.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { beerGPerMl, plato } from "./gravity.ts";
import { fahrenheit } from "./units.ts";

export const RESIDUAL_FIELDS = ["highest_temp_c", "measured_vol"] as const;
export const EXTRACT_FIELDS = ["present_gravity", "limit_gravity"] as const;

/** The highest temperature since fermentation ended, or CO2 as measured, which comes first. */
export interface ResidualInputs {
  highest_temp_c?: number | null;
  measured_vol?: number | null;
}

/** Present gravity and attenuation limit, or neither. */
export interface ExtractInputs {
  present_gravity?: number | null;
  limit_gravity?: number | null;
}

/** Volumes of CO2 in the beer, and still to come from its own extract. */
export interface Sources {
  residualVol: number;
  fromExtractVol: number;
}

/** CO2 that stays in beer fermented open, by the highest temperature since. */
export function residualVol(work: Working, highestTempC: number): number {
  const curve = work.figure("residual_co2_curve");
  const tempF = fahrenheit(highestTempC);
  const vol = curve.a - curve.b * tempF + curve.c * tempF ** 2;
  const says = "CO2 left = a - b F + c F², F the highest temperature since fermentation ended";
  return work.step(says, vol, "vol", 3);
}

/** A measured value where there is one, or what the temperature leaves. */
export function askedResidualVol(work: Working, asked: Asked): number {
  if (asked.has("measured_vol")) {
    const measured = asked.number("measured_vol");
    return work.step("CO2 as measured, in place of what is left", measured, "vol", 3);
  }
  work.caution("residual_is_estimate");
  return residualVol(work, asked.number("highest_temp_c"));
}

/** CO2 still to come while the beer falls to its attenuation limit; none below the limit. */
export function fromExtractVol(
  work: Working,
  presentGravity: number,
  limitGravity: number,
): number {
  let fallP = plato(work, presentGravity) - plato(work, limitGravity);
  if (fallP < 0) {
    work.caution("below_limit");
    fallP = 0;
  }
  const share = work.figure("real_per_apparent_extract");
  const density = beerGPerMl(work, presentGravity, work.figure("gravity_reference_c"));
  const fermented = share * fallP * 10 * density;
  work.step("Extract to ferment = r (P present - P limit) 10 d", fermented, "g/L", 2);
  const balling = work.figure("balling");
  const grams = (fermented * balling.co2_g) / balling.extract_g;
  const vol = grams / work.figure("co2_g_per_l_per_vol");
  return work.step("CO2 to come = extract x k, k of Balling's balance", vol, "vol", 3);
}

/** None where neither gravity is given; both are needed if one is. */
export function askedFromExtractVol(work: Working, asked: Asked): number {
  if (!EXTRACT_FIELDS.some((field) => asked.has(field))) return 0;
  const present = asked.number("present_gravity");
  return fromExtractVol(work, present, asked.number("limit_gravity"));
}

/** Both, as the rules that build on them ask for them. */
export function askedSources(work: Working, asked: Asked): Sources {
  const residual = askedResidualVol(work, asked);
  return { residualVol: residual, fromExtractVol: askedFromExtractVol(work, asked) };
}

/** CO2-1: CO2 in the beer now, and what its own extract will still give. */
export function co2InBeer(
  inputs: ResidualInputs & ExtractInputs,
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, [...RESIDUAL_FIELDS, ...EXTRACT_FIELDS]);
  const work = new Working(settings);
  const { residualVol: now, fromExtractVol: toCome } = askedSources(work, asked);
  const grams = work.figure("co2_g_per_l_per_vol");
  return work.done({
    residual_vol: halfUp(now, 3),
    residual_g_per_l: halfUp(now * grams, 2),
    from_extract_vol: halfUp(toCome, 3),
    total_vol: halfUp(now + toCome, 3),
    total_g_per_l: halfUp((now + toCome) * grams, 2),
  });
}
