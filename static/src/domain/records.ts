/** Beers, gyles, places and customers, field by field. Twin of cellarapp/domain/records.py. */
import { type Entry, isRecordKind, orderKey, type RecordKind } from "./entries.ts";
import { isNumber } from "./numbers.ts";
import { type Mark, mark } from "./standing.ts";

/** The last time somebody asked a customer for containers, and what was promised. */
export interface Chase extends Mark {
  words: string;
  promised_on: string | null;
}

/** The fields of one thing, and for each the order key of the entry that set it. */
export interface RecordOf<Fields> {
  fields: Partial<Fields> & { retired?: boolean };
  set_by: Record<string, string>;
}

export interface BeerFields {
  name: string;
  abv_tenths: number;
  style: string;
  conditioning_days: number;
  best_before_days: number;
  on_sale_days: number;
}

export interface GyleFields {
  number: string;
  beer: string;
  brewed_on: string;
  volume_ml: number;
}

export interface PlaceFields {
  name: string;
  role: "store" | "yard" | "stillage" | "bar";
}

export interface CustomerFields {
  name: string;
  contact: string;
  phone: string;
  agreed_days: number;
  delivery_day: number;
}

export type Beer = RecordOf<BeerFields>;
export type Gyle = RecordOf<GyleFields> & { drawn_ml: number };
export type Place = RecordOf<PlaceFields>;
export type Customer = RecordOf<CustomerFields> & { chase: Chase | null };
export type AnyRecord = RecordOf<Record<string, unknown>> & {
  drawn_ml?: number;
  chase?: Chase | null;
};

export function blankRecord(type: RecordKind): AnyRecord {
  if (type === "gyle") return { fields: {}, set_by: {}, drawn_ml: 0 };
  if (type === "customer") return { fields: {}, set_by: {}, chase: null };
  return { fields: {}, set_by: {} };
}

/** A number is a container, anything else is what its entries call it; null while only corrections speak of it. */
export function subjectType(
  subject: string,
  kinds: Iterable<string>,
): RecordKind | "container" | null {
  if (isNumber(subject)) return "container";
  const all = [...kinds];
  const [named] = all.filter(isRecordKind).sort();
  return named ?? (all.includes("chased") ? "customer" : null);
}

/** The record after an entry that sets fields, or notes a chase; it may come in any order. */
export function setFields<R extends AnyRecord>(record: R, entry: Entry): R {
  const key = orderKey(entry);
  const isLater = (name: string) => key > (record.set_by[name] ?? "");
  if (entry.kind === "chased") {
    if (!isLater("chase")) return record;
    const { words = "", promised_on = null } = entry.facts;
    const chase: Chase = { ...mark(entry), words, promised_on };
    return { ...record, chase, set_by: { ...record.set_by, chase: key } };
  }
  if (!isRecordKind(entry.kind)) return record;
  const fields: Record<string, unknown> = { ...record.fields };
  const setBy = { ...record.set_by };
  for (const [name, value] of Object.entries(entry.facts)) {
    if (!isLater(name)) continue;
    fields[name] = value;
    setBy[name] = key;
  }
  return { ...record, fields, set_by: setBy };
}

/** A record from its entries in any order. Litres drawn from a gyle come from its fills. */
export function foldRecord(type: RecordKind, entries: Entry[]): AnyRecord {
  return entries.reduce(setFields, blankRecord(type));
}

/** What the fills that count have drawn from a gyle, mL. */
export function drawnMl(gyle: string, counting: Entry[]): number {
  return counting
    .filter((e) => e.kind === "filled" && e.facts.gyle === gyle)
    .reduce((sum, e) => sum + Number(e.facts.volume_ml), 0);
}
