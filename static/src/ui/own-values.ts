// From the rows of the ledger to the brewery's own values, as the rules take them.

import { FIGURES, type FigureId, MILLIONTHS, type Settings } from "../domain/figures.ts";
import type { Setting } from "../domain/records.ts";

/** By the figure's id; one given up again is left out, so that the default stands. */
export const ownValues = (rows: ReadonlyMap<string, Setting>): Settings => {
  const own: { [id: string]: number | number[] } = {};
  for (const [id, { fields }] of rows) {
    if (fields.retired === true) continue;
    const { value_millionths: value, values_millionths: values } = fields;
    if (FIGURES[id as FigureId]?.least === undefined) {
      if (value !== undefined) own[id] = value / MILLIONTHS;
    } else if (values !== undefined) own[id] = values.map((one) => one / MILLIONTHS);
  }
  return own;
};
