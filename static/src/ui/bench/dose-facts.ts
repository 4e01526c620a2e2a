// A dose as an entry carries it.

import type { Facts } from "../../domain/entries.ts";
import type { DoseLine } from "./dose-line.ts";
import type { LotsInUse } from "./lots.ts";

export const doseFacts = (line: DoseLine, amount: number, lots: LotsInUse): Facts => {
  const lot = lots[line.what];
  return {
    what: line.what,
    [line.unit === "mL" ? "amount_ml" : "amount_g"]: amount,
    ...(lot === undefined ? {} : { lot }),
  };
};
