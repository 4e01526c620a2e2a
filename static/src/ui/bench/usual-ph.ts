// The pH that a beer usually has, from what was measured of its other gyles.

import type { Known } from "../words.ts";

/** From fewer gyles nothing is usual yet. */
const LEAST = 3;

/** Their mean; null while too few were measured. */
export const usualPh = (known: Known, gyle: string): number | null => {
  const beer = known.gyles.get(gyle)?.fields.beer;
  const measured: number[] = [];
  for (const [id, { fields }] of known.gyles) {
    if (id === gyle || fields.beer !== beer || fields.ph_hundredths === undefined) continue;
    measured.push(fields.ph_hundredths);
  }
  if (beer === undefined || measured.length < LEAST) return null;
  return measured.reduce((sum, ph) => sum + ph, 0) / measured.length / 100;
};
