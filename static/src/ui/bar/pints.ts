// Pints and litres. A bar counts in pints, the ledger in whole millilitres.

import figures from "../../../../cellarapp/domain/figures.json";

const PINTS_TO_THE_GALLON = 8;
const PINT_ML = figures.imperial_gallon_ml.value / PINTS_TO_THE_GALLON;

/**
 * Whole pints that can still be drawn: half a pint is nobody's pint. The ledger's millilitres may
 * be up to half a one short of the pints that were typed, which must come out as they went in.
 */
export const wholePints = (ml: number): number => Math.floor((ml + 0.5) / PINT_ML);

/** Pints typed by a person ("38", "38.5", "38,5") in mL, halves up; null where they are no figure. */
export const pintsAsMl = (text: string): number | null => {
  const clean = text.trim().replace(",", ".");
  if (!/^\d{1,3}(\.\d{0,2})?$/.test(clean)) return null;
  return Math.floor(Number(clean) * PINT_ML + 0.5);
};
