// How to make the priming syrup up, from what the rule says of the batch.

import type { SugarName } from "../../domain/bench/sugars.ts";
import { figure } from "../../domain/figures.ts";
import type { DoseLine, Racked } from "./dose-line.ts";

/** What the primings' rule says of a batch of syrup. */
interface Batch {
  batch_ml: number;
  batch_sugar_g: number;
  left_ml: number;
}

const batchOf = (line: DoseLine): Batch | null => {
  const result = line.worked[0]?.result as { syrup?: Batch | null } | undefined;
  return line.what === "primings" ? (result?.syrup ?? null) : null;
};

/** "sucrose", "dextrose monohydrate": without what is only said where it is chosen. */
const sugarWords = ({ priming_sugar = "" }: Racked["beer"]): string =>
  (figure("priming_sugars")[priming_sugar as SugarName]?.name ?? "sugar")
    .replace(/ \(.*/, "")
    .toLowerCase();

/** "Dissolve 1200 g of sucrose and make up to 1500 mL; 80 mL are left over." */
export const syrupWords = (line: DoseLine, beer: Racked["beer"]): string => {
  const batch = batchOf(line);
  if (batch === null || batch.batch_ml === 0) return "";
  const sugar = Math.floor(batch.batch_sugar_g + 0.5);
  return `Dissolve ${sugar} g of ${sugarWords(beer)} and make up to ${batch.batch_ml} mL with boiled liquor; ${batch.left_ml} mL are left over.`;
};
