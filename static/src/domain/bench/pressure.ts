/** Pressure in sealed containers and for kegs. Twin of cellarapp/domain/bench/pressure.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { ATMOSPHERE_BAR, fahrenheit, kelvin, PSI_BAR } from "./units.ts";

export const SEALED_FIELDS = ["cellar_temp_c", "dray_temp_c", "limit_bar"] as const;

/** The dray's temperature is the brewery's where none is given; the limit is as marked. */
export interface SealedInputs {
  cellar_temp_c: number;
  dray_temp_c?: number | null;
  limit_bar?: number | null;
}

/** Pressure above atmosphere at which beer holds so much CO2, by Henry's law. */
export function sealedBar(work: Working, totalVol: number, tempC: number, says: string): number {
  const henry = work.figure("henry_co2");
  const massG = work.figure("molar_masses_g").co2;
  const byWarmth = Math.exp(henry.slope_k * (1 / kelvin(tempC) - 1 / henry.at_k));
  const gPerLPerBar = henry.mol_per_m3_pa * byWarmth * massG * 100;
  const grams = totalVol * work.figure("co2_g_per_l_per_vol");
  return work.step(says, Math.max(0, grams / gPerLPerBar - ATMOSPHERE_BAR), "bar", 2);
}

/** The pressure never to be passed: the marked limit, and the general stop in any case. */
export function stopBar(work: Working, asked: Asked): number {
  const stop = work.figure("pressure_stop_bar");
  if (asked.has("limit_bar")) return Math.min(stop, asked.number("limit_bar"));
  work.caution("limit_not_known");
  return stop;
}

/** Warns before it is dangerous, and says so when it is. */
export function warnOf(work: Working, mostBar: number, stop: number): void {
  const share = work.setting("pressure_warn_pct_of_limit") / 100;
  if (mostBar >= stop) work.caution("pressure_at_limit");
  else if (mostBar >= Math.min(work.setting("pressure_warn_bar"), share * stop)) {
    work.caution("pressure_high");
  }
}

/** Pressure in the cellar and on a warm dray, with the warnings that go with them. */
export function askedSealed(work: Working, asked: Asked, totalVol: number) {
  const cellarC = asked.number("cellar_temp_c");
  const given = asked.has("dray_temp_c");
  const drayC = given ? asked.number("dray_temp_c") : work.setting("warm_dray_temp_c");
  const cellar = sealedBar(work, totalVol, cellarC, "Sealed, cellar: c / (H M) - 1 atm");
  const dray = sealedBar(work, totalVol, drayC, "Sealed, warm dray: c / (H M) - 1 atm");
  work.caution("sealed_pressure_is_estimate");
  if (cellarC > work.figure("vigorous_secondary_above_c")) work.caution("secondary_too_warm");
  warnOf(work, Math.max(cellar, dray), stopBar(work, asked));
  return {
    cellar_bar: halfUp(cellar, 2),
    dray_bar: halfUp(dray, 2),
    dray_temp_c: halfUp(drayC, 1),
  };
}

/** PRESS-1: pressure to be expected in a sealed, full container. */
export function sealedPressure(
  inputs: SealedInputs & { total_vol: number },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["total_vol", ...SEALED_FIELDS]);
  const work = new Working(settings);
  return work.done(askedSealed(work, asked, asked.number("total_vol")));
}

/** Pressure above atmosphere that carbonates beer at rest, by the published chart. */
export function kegBar(work: Working, tempC: number, vol: number): number {
  const k = work.figure("keg_pressure_curve");
  const f = fahrenheit(tempC);
  let psi = k.one + k.f * f + k.ff * f ** 2 + k.fv * f * vol + k.v * vol;
  psi += k.vv * vol ** 2;
  const says = "Pressure = a + b F + c F² + d F V + e V + f V², in psi";
  return work.step(says, psi, "psi", 2) * PSI_BAR;
}

/** PRESS-2: pressure that brings a keg to so many volumes; none above the marked limit. */
export function kegPressure(
  inputs: { keg_temp_c: number; keg_vol: number; limit_bar?: number | null },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["keg_temp_c", "keg_vol", "limit_bar"]);
  const work = new Working(settings);
  const found = kegBar(work, asked.number("keg_temp_c"), asked.number("keg_vol"));
  const bar = work.step("The same in bar", Math.max(0, found), "bar", 2);
  const stop = stopBar(work, asked);
  work.caution("regulator_and_relief");
  warnOf(work, bar, stop);
  const allowed = halfUp(bar, 2) <= stop;
  return work.done({
    pressure_bar: allowed ? halfUp(bar, 2) : null,
    pressure_psi: allowed ? halfUp(bar / PSI_BAR, 1) : null,
    limit_bar: stop,
  });
}
