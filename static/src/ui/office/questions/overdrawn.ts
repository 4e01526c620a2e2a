// Gyles from which more was racked than there was, by what the phone has on record.

import type { Gyle } from "../../../domain/records.ts";

export interface Overdrawn {
  gyle: string;
  record: Gyle;
  volume_ml: number;
  drawn_ml: number;
}

export const overdrawn = (gyles: ReadonlyMap<string, Gyle>): Overdrawn[] => {
  const found: Overdrawn[] = [];
  for (const [gyle, record] of gyles) {
    const volume_ml = record.fields.volume_ml;
    if (volume_ml !== undefined && record.drawn_ml > volume_ml) {
      found.push({ gyle, record, volume_ml, drawn_ml: record.drawn_ml });
    }
  }
  return found.sort((a, b) => b.drawn_ml - b.volume_ml - (a.drawn_ml - a.volume_ml));
};
