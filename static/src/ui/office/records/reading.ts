// From what was typed in a form to the facts of an entry, or to what is wrong with it in words.

import type { Doc } from "../../words.ts";
import { byKind, writtenByKind } from "./by-kind.ts";
import type { FieldSpec, OfficeKind, RecordSpec } from "./specs.ts";

export type Typed = { readonly [field: string]: string };
export type Faults = { readonly [field: string]: string };
/** A place on the map, in millionths of a degree. */
interface MapPlace {
  latitude_e6: number;
  longitude_e6: number;
}

type ByKind = { readonly [kind in string]: number };

export type Fact = string | number | boolean | readonly string[] | MapPlace | ByKind;
type Value = Fact | null;

/** Thrown and caught in this file only; its message is for the person at the form. */
class Fault extends Error {}

const WHOLE = /^\d{1,9}$/;
const DECIMAL = /^\d{1,7}(\.\d{1,4})?$/;
const BELOW_NOUGHT = /^[-−]/;
const PREFIX = /^\d{4,12}$/;
const WEB = /^https:\/\/[a-z0-9.-]+(:\d{1,5})?$/;
const PHONE = /^[+0-9][0-9 ()/-]{2,}$/;

const decimal = (text: string): number => {
  const clean = text.replace(",", ".");
  if (!DECIMAL.test(clean)) throw new Fault("A figure, such as 4.2.");
  return Number(clean);
};

const PLACE_ON_MAP = /^(-?\d{1,2}(?:\.\d{1,15})?)[,;\s]+(-?\d{1,3}(?:\.\d{1,15})?)$/;
const MILLIONTHS = 1_000_000;

/** Two numbers as any map gives them, with a comma or a blank between. */
const mapPlace = (text: string): MapPlace => {
  const [, latitude, longitude] = PLACE_ON_MAP.exec(text) ?? [];
  const inMillionths = (degrees: string | undefined) => Math.round(Number(degrees) * MILLIONTHS);
  const place = { latitude_e6: inMillionths(latitude), longitude_e6: inMillionths(longitude) };
  const within = Math.abs(place.latitude_e6) <= 90e6 && Math.abs(place.longitude_e6) <= 180e6;
  if (!within) throw new Fault("Latitude and longitude, such as 54.1234, -2.5678.");
  return place;
};

const scaled = (spec: { per: number; least: number; most: number }, text: string): number => {
  const sign = spec.least < 0 && BELOW_NOUGHT.test(text) ? -1 : 1;
  const n = sign * Math.floor(decimal(sign < 0 ? text.slice(1) : text) * spec.per + 0.5);
  if (n < spec.least || n > spec.most) {
    throw new Fault(`From ${spec.least / spec.per} to ${spec.most / spec.per}.`);
  }
  return n;
};

/** The ledger keeps ten-thousandths of a gravity. */
const GRAVITY_PER = 10_000;

/** No gravity is near this: 1011 can only be meant as 1.011. */
const SAID_IN_THOUSANDS = 100;

const gravity = (spec: { least: number; most: number }, text: string): number => {
  const said = decimal(text);
  const full = said > SAID_IN_THOUSANDS ? said / 1000 : said;
  return scaled({ ...spec, per: GRAVITY_PER }, full.toFixed(4));
};

/** In the order of their names, so that the same amounts are the same whoever typed them. */
const amountsByKind = (spec: FieldSpec & { is: "by_kind" }, text: string): ByKind =>
  Object.fromEntries(
    [...byKind(text)]
      .map(([kind, amount]) => [kind, scaled(spec, amount.trim())] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

/** The value for the ledger; null where the field was left empty. */
const readValue = (spec: FieldSpec, text: string): Value => {
  if (text === "") return null;
  switch (spec.is) {
    case "words":
      if (text.length > spec.most) throw new Fault(`At most ${spec.most} letters fit here.`);
      if (spec.phone && !PHONE.test(text)) throw new Fault("A telephone number has digits only.");
      if (spec.prefix && !PREFIX.test(text)) throw new Fault("4 to 12 digits, as GS1 gave them.");
      if (spec.web && !WEB.test(text))
        throw new Fault("As https://casks.example, nothing after it.");
      return text;
    case "whole": {
      const { unit = "days" } = spec;
      if (!WHOLE.test(text)) throw new Fault(`Whole ${unit} only, in figures.`);
      const n = Number(text);
      if (n < spec.least || n > spec.most) {
        throw new Fault(`From ${spec.least} to ${spec.most} ${unit}.`);
      }
      return n;
    }
    case "scaled":
      return scaled(spec, text);
    case "gravity":
      return gravity(spec, text);
    case "tenths": {
      const n = Math.floor(decimal(text) * 10 + 0.5);
      if (n > spec.most) throw new Fault(`At most ${spec.most / 10}.`);
      return n;
    }
    case "litres": {
      const ml = Math.floor(decimal(text) * 1000 + 0.5);
      if (ml < 1 || ml > spec.most) throw new Fault("That cannot be the litres of one gyle.");
      return ml;
    }
    case "map":
      return mapPlace(text);
    case "by_kind":
      return amountsByKind(spec, text);
    case "weekday":
      return Number(text);
    case "day":
      // A year typed with two digits arrives as 0026, which the brewery's server would not take.
      if (!/^(?:19|20|21)\d\d-\d\d-\d\d$/.test(text)) {
        throw new Fault("A day with all of its year, such as 25/11/2026.");
      }
      return text;
    case "record":
    case "choice":
      return text;
    case "yes":
      return text === "yes";
    case "several":
      return text.split(" ");
    default: {
      const forgotten: never = spec;
      throw new Error(`unhandled ${String(forgotten)}`);
    }
  }
};

export const same = (a: string, b: string): boolean =>
  a.trim().toLowerCase() === b.trim().toLowerCase();

/** One field read and judged against the other records that are still in use. */
const readField = (spec: FieldSpec, text: string, others: readonly Doc[]): Value => {
  const value = readValue(spec, text);
  if (value === null && spec.needed) {
    throw new Fault(
      spec.is === "record" || spec.is === "choice" ? "Choose one." : "This is needed.",
    );
  }
  if (spec.is === "words" && spec.unique && value !== null) {
    const taken = others.some((other) => same(String(other.fields[spec.name] ?? ""), text));
    if (taken) throw new Fault("There is one of that name already.");
  }
  return value;
};

/** How the ledger is told that a field is empty again. */
const emptied = ({ is }: FieldSpec): Value | [] => {
  if (is === "several") return [];
  return is === "words" ? "" : null;
};

/** Lists are alike by what is in them. */
const alike = (a: Value, b: Value): boolean => JSON.stringify(a) === JSON.stringify(b);

export interface Reading {
  /** What has changed, ready to be recorded; empty when nothing has. */
  facts: { [field: string]: Value };
  faults: Faults;
}

/** The whole form. `before` is the record being changed, null for a new one. */
export const readForm = (
  spec: RecordSpec,
  typed: Typed,
  before: Doc | null,
  others: readonly Doc[],
): Reading => {
  const facts: { [field: string]: Value } = {};
  const faults: { [field: string]: string } = {};
  for (const field of spec.fields) {
    try {
      const value = readField(field, (typed[field.name] ?? "").trim(), others);
      const was = (before?.fields[field.name] ?? null) as Value;
      if (value !== null && !alike(value, was)) facts[field.name] = value;
      else if (value === null && was !== null && !alike([], was)) {
        facts[field.name] = emptied(field);
      }
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      faults[field.name] = fault.message;
    }
  }
  return { facts, faults };
};

/** What a form shows for a record: the ledger's whole units as people write them. */
export const asTyped = (spec: RecordSpec, doc: Doc | null): Typed => {
  const typed: { [field: string]: string } = {};
  for (const field of spec.fields) {
    const value: unknown = doc?.fields[field.name];
    typed[field.name] = value === undefined || value === null ? "" : written(field, value);
  }
  return typed;
};

/** What the form of a new record begins with: where a record must be chosen, the only one in use. */
export const asNew = (
  spec: RecordSpec,
  docsOf: (kind: OfficeKind) => ReadonlyMap<string, Doc>,
): Typed => {
  const typed: { [field: string]: string } = { ...asTyped(spec, null) };
  for (const field of spec.fields) {
    if (field.is !== "record" || !field.needed) continue;
    const [only, another] = [...docsOf(field.of)].filter(([, doc]) => doc.fields.retired !== true);
    if (only !== undefined && another === undefined) typed[field.name] = only[0];
  }
  return typed;
};

const written = (field: FieldSpec, value: unknown): string => {
  if (Array.isArray(value)) return value.join(" ");
  if (field.is === "map") {
    const { latitude_e6, longitude_e6 } = value as MapPlace;
    return `${latitude_e6 / MILLIONTHS}, ${longitude_e6 / MILLIONTHS}`;
  }
  if (field.is === "by_kind") {
    const amounts = Object.entries(value as ByKind);
    return writtenByKind(new Map(amounts.map(([kind, n]) => [kind, String(n / field.per)])));
  }
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value !== "number") return String(value);
  if (field.is === "gravity") return (value / GRAVITY_PER).toFixed(value % 10 === 0 ? 3 : 4);
  if (field.is === "scaled") return String(value / field.per);
  if (field.is === "tenths") return String(value / 10);
  return field.is === "litres" ? String(value / 1000) : String(value);
};
