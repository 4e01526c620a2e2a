// The single questions that deeds ask, each with the fact that its answer becomes.

import { CONTAINER_KINDS } from "../../domain/containers.ts";
import type { Standing } from "../../domain/standing.ts";
import { placesFor } from "../cellar/places.ts";
import type { Option } from "../parts/Field.tsx";
import { type Known, litres, typedMl } from "../words.ts";
import { readLimit } from "./marked-limit.ts";

export interface Asked {
  fact: string;
  label: string;
  is: "words" | "litres" | "degrees" | "bar" | "whole" | "choice";
  needed?: true;
  hint?: string;
  options?: (known: Known) => readonly Option[];
  /** What stands in it at first. */
  first?: (standing: Standing) => string;
}

/** Customers in use, by name. */
const customers = (known: Known): Option[] =>
  [...known.customers]
    .filter(([, { fields }]) => !fields.retired && fields.name)
    .map(([value, { fields }]) => ({ value, label: fields.name ?? "" }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));

const places = (role?: "stillage") => (known: Known) =>
  placesFor(known.places, role).map(({ id, name }) => ({ value: id, label: name }));

const kinds = (): Option[] =>
  Object.entries(CONTAINER_KINDS).map(([value, { name }]) => ({ value, label: name }));

const plainLitres = (ml: number | null): string =>
  ml === null ? "" : litres(ml).replace(/\s.*/, "");

const plainMm = (mm: number | undefined): string => (mm === undefined ? "" : String(mm));

const clarities = (): Option[] =>
  ["bright", "nearly bright", "hazy", "cloudy"].map((value) => ({ value, label: value }));

const asked = <A extends { [name: string]: Asked }>(all: A): A => all;

export const ASKED = asked({
  place: { fact: "place", label: "Where", is: "choice", needed: true, options: places() },
  stillage: { fact: "place", label: "Which stillage", is: "choice", options: places("stillage") },
  litresLeft: { fact: "left_ml", label: "Litres left", is: "litres", needed: true },
  ullage: { fact: "ullage_ml", label: "Litres still in it", is: "litres", needed: true },
  customer: { fact: "customer", label: "To whom", is: "choice", needed: true, options: customers },
  why: { fact: "why", label: "Why, if it matters", is: "words" },
  needWhy: { fact: "why", label: "Why", is: "words", needed: true },
  words: { fact: "words", label: "Note", is: "words", needed: true },
  temperature: { fact: "temp_decidegc", label: "Temperature, °C", is: "degrees" },
  clarity: { fact: "clarity", label: "Clarity", is: "choice", options: clarities },
  taste: { fact: "taste", label: "Taste", is: "words" },
  remarks: { fact: "words", label: "Anything else", is: "words" },
  kind: {
    fact: "kind",
    label: "Kind",
    is: "choice",
    needed: true,
    options: kinds,
    first: ({ kind }) => kind ?? "firkin",
  },
  capacity: {
    fact: "capacity_ml",
    label: "Holds, litres",
    is: "litres",
    hint: "Left empty, what its kind holds.",
    first: ({ capacity_ml }) => plainLitres(capacity_ml),
  },
  tare: {
    fact: "tare_g",
    label: "Weight empty, g",
    is: "whole",
    first: ({ tare_g }) => (tare_g === null ? "" : String(tare_g)),
  },
  owner: {
    fact: "owner",
    label: "Owner, if hired",
    is: "words",
    first: ({ owner }) => owner ?? "",
  },
  limit: {
    fact: "limit_millibar",
    label: "Working pressure as marked, bar",
    is: "bar",
    hint: "Stamped on it. No dose and no carbonation is to pass it.",
    first: ({ limit_millibar: limit }) => (limit === null ? "" : String(limit / 1000)),
  },
  bung: {
    fact: "bung_diameter_mm",
    label: "Inside across at the bung, mm",
    is: "whole",
    hint: "For the dip rod: all three measures of a cask, or none.",
    first: ({ inside }) => plainMm(inside?.bung_diameter_mm),
  },
  head: {
    fact: "head_diameter_mm",
    label: "Inside across at the head, mm",
    is: "whole",
    first: ({ inside }) => plainMm(inside?.head_diameter_mm),
  },
  length: {
    fact: "length_mm",
    label: "Inside from head to head, mm",
    is: "whole",
    first: ({ inside }) => plainMm(inside?.length_mm),
  },
} satisfies { [name: string]: Asked });

/** An answer read: the fact, null where it was left empty, or a fault in words. */
export type Answer = { value: string | number | null } | { fault: string };

const DECIMAL = /^-?\d{1,3}([.,]\d)?$/;

export const readAnswer = (one: Asked, text: string): Answer => {
  const clean = text.trim();
  if (clean === "") return one.needed ? { fault: "This is needed." } : { value: null };
  if (one.is === "litres") {
    const ml = typedMl(clean);
    return ml === null ? { fault: "Litres, as 36.5." } : { value: ml };
  }
  if (one.is === "degrees") {
    if (!DECIMAL.test(clean)) return { fault: "Degrees, as 11.5." };
    return { value: Math.floor(Number(clean.replace(",", ".")) * 10 + 0.5) };
  }
  if (one.is === "bar") {
    const limit = readLimit(clean);
    return typeof limit === "string" ? { fault: limit } : { value: limit };
  }
  if (one.is === "whole") {
    return /^\d{1,7}$/.test(clean) ? { value: Number(clean) } : { fault: "A whole figure." };
  }
  return { value: clean };
};
