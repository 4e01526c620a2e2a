// A dose as an entry carries it.

import type { Facts } from "../../domain/entries.ts";
import type { DoseLine } from "./doses.ts";
import type { LotsInUse } from "./lots.ts";

export const doseFacts = (line: DoseLine, lots: LotsInUse): Facts => {
  const [amount = 0] = line.each ?? [];
  const lot = lots[line.what];
  return {
    what: line.what,
    [line.unit === "mL" ? "amount_ml" : "amount_g"]: amount,
    ...(lot === undefined ? {} : { lot }),
  };
};
