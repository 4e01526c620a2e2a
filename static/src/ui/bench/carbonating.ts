// A keg that is carbonated instead of primed: the pressure to set, by the published chart.

import { kegPressure } from "../../domain/bench/pressure.ts";
import type { AnyWorked } from "../parts/working.ts";
import { type Missing, type Racked, refused } from "./dose-line.ts";
import { isKeg, limitBarOf, type Size } from "./sizes.ts";

export interface Carbonating {
  /** The kegs, with the pressure for each size; null where it would pass the keg's own limit. */
  kegs: { size: Size; bar: number | null; limitBar: number }[];
  vol: number;
  tempC: number;
  missing: Missing | null;
  worked: AnyWorked[];
}

/** Such a keg gets no sugar and no finings; one of a beer with no carbonation is filled as casks are. */
export const carbonated = (beer: Racked["beer"], size: Pick<Size, "kind">): boolean =>
  beer.keg_co2_centivols !== undefined && isKeg(size);

/** Null where there is no such keg among them. */
export const carbonating = (racked: Racked, tempC: number): Carbonating | null => {
  const { beer, settings } = racked;
  const sizes = racked.sizes.filter((size) => carbonated(beer, size));
  if (sizes.length === 0) return null;
  const vol = (beer.keg_co2_centivols ?? 0) / 100;
  const found: Carbonating = { kegs: [], vol, tempC, missing: null, worked: [] };
  try {
    for (const size of sizes) {
      const asked = { keg_temp_c: tempC, keg_vol: vol, limit_bar: limitBarOf(size) };
      const worked = kegPressure(asked, settings);
      const { pressure_bar: bar, limit_bar: limitBar } = worked.result;
      found.kegs.push({ size, bar, limitBar });
      found.worked.push(worked);
    }
    return found;
  } catch (fault) {
    return { ...found, kegs: [], missing: refused(fault) };
  }
};
