// How to make the priming syrup up, from what the rule says of the batch.

import type { DoseLine } from "./doses.ts";

/** What the primings' rule says of a batch of syrup. */
export interface Batch {
  batch_ml: number;
  batch_sugar_g: number;
  left_ml: number;
}

const batchOf = (line: DoseLine): Batch | null => {
  const result = line.worked[0]?.result as { syrup?: Batch | null } | undefined;
  return line.what === "primings" ? (result?.syrup ?? null) : null;
};

/** "Dissolve 1200 g of sugar and make up to 1500 mL; 80 mL are left over." */
export const syrupWords = (line: DoseLine): string => {
  const batch = batchOf(line);
  if (batch === null || batch.batch_ml === 0) return "";
  const sugar = Math.floor(batch.batch_sugar_g + 0.5);
  return `Dissolve ${sugar} g of sugar and make up to ${batch.batch_ml} mL; ${batch.left_ml} mL are left over.`;
};
