// From the rows of the ledger to the brewery's own values, as the rules take them.

import type { Settings } from "../domain/figures.ts";
import type { Setting } from "../domain/records.ts";

/** By the figure's id; one given up again is left out, so that the default stands. */
export const ownValues = (rows: ReadonlyMap<string, Setting>): Settings => {
  const own: { [id: string]: number } = {};
  for (const [id, { fields }] of rows) {
    if (fields.value_millionths != null && fields.retired !== true) {
      own[id] = fields.value_millionths / 1_000_000;
    }
  }
  return own;
};
