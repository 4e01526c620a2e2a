// What a sentence may draw on: the records by id, and the time it is.

import type { AnyRecord, Beer, Customer, Gyle, Lot, Place } from "../../domain/records.ts";

export interface Known {
  readonly beers: ReadonlyMap<string, Beer>;
  readonly gyles: ReadonlyMap<string, Gyle>;
  readonly places: ReadonlyMap<string, Place>;
  readonly customers: ReadonlyMap<string, Customer>;
  readonly lots: ReadonlyMap<string, Lot>;
  readonly now: string;
}

/** The beer that a gyle is of; null where the phone does not know one of the two. */
export const beerDoc = (known: Known, gyle: string): Beer | null =>
  known.beers.get(known.gyles.get(gyle)?.fields.beer ?? "") ?? null;

/** A field that holds words, or "" where it holds nothing. */
export const text = (doc: { fields: object } | null | undefined, name: string): string => {
  const value = (doc?.fields as { [name: string]: unknown } | undefined)?.[name];
  return typeof value === "string" ? value : "";
};

/** Any record, where only its fields are looked at. */
export type Doc = AnyRecord;
