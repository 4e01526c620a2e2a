// What a form about new containers says, read and judged.

import { CONTAINER_KINDS, LARGEST_ML } from "../../../domain/containers.ts";
import type { Hire, Standing } from "../../../domain/standing.ts";
import { readLimit } from "../../container/marked-limit.ts";
import { count, listWords, typedMl } from "../../words.ts";
import { MOST_ENTERED, readNumbers } from "./numbers.ts";

export interface TypedRegistration {
  numbers: string;
  kind: string;
  /** Litres as typed; "" for the nominal ones of the kind. */
  litres: string;
  /** Kilograms when empty, as typed. */
  tare: string;
  /** Bar as marked on them; asked of kegs only. */
  limit: string;
  owner: string;
  /** Pounds a day as typed, and the day it goes back; both or neither. */
  hirePounds: string;
  hireDueOn: string;
  place: string;
}

export interface Registration {
  /** Those to be entered: the ones that are not on record yet. */
  numbers: string[];
  known: string[];
  facts: {
    kind: string;
    capacity_ml: number;
    tare_g?: number;
    limit_millibar?: number;
    owner?: string;
    hire?: Hire;
    place?: string;
  };
  faults: { numbers?: string; litres?: string; tare?: string; limit?: string; hire?: string };
}

/** The largest that the brewery's server takes in. */
const MOST_ML = 4 * LARGEST_ML;
const MOST_TARE_G = 1_000_000;

const readLitres = (typed: string, kind: string): number | string => {
  const nominal = CONTAINER_KINDS[kind]?.capacity_ml ?? null;
  if (typed.trim() === "") return nominal ?? "How many litres does one hold?";
  const ml = typedMl(typed);
  return ml === null || ml < 1 || ml > MOST_ML ? "Litres, such as 40.9." : ml;
};

const readTare = (typed: string): number | undefined | string => {
  if (typed.trim() === "") return undefined;
  const grams = typedMl(typed); // thousandths of whatever was typed
  return grams === null || grams < 1 || grams > MOST_TARE_G ? "Kilograms, such as 11.5." : grams;
};

export const isKeg = (kind: string): boolean => CONTAINER_KINDS[kind]?.shape === "keg";

const readMarked = ({ kind, limit }: TypedRegistration): number | undefined | string =>
  isKeg(kind) && limit.trim() !== "" ? readLimit(limit) : undefined;

const HIRE_FAULT = "Pounds a day, such as 0.15, the day it goes back, and its owner.";

/** Nothing where none is hired; what is wrong where only half is said. */
const readHire = ({ hirePounds, hireDueOn, owner }: TypedRegistration): Hire | string | null => {
  const pounds = hirePounds.trim().replace(",", ".");
  if (pounds === "" && hireDueOn === "") return null;
  const isDay = /^20\d\d-\d\d-\d\d$/.test(hireDueOn);
  if (!/^\d{1,3}(\.\d{1,2})?$/.test(pounds) || !isDay || owner.trim() === "") return HIRE_FAULT;
  return { pence_a_day: Math.round(Number(pounds) * 100), due_on: hireDueOn };
};

const numbersFault = (numbers: number, unread: string[], known: string[]): string | null => {
  if (unread.length > 0)
    return `Not a number, nor a run of 2 to ${MOST_ENTERED}: ${listWords(unread)}.`;
  if (numbers > 0) return null;
  return known.length > 0 ? "All of these are on record already." : "Type the numbers.";
};

export const readRegistration = (
  typed: TypedRegistration,
  containers: ReadonlyMap<string, Standing>,
): Registration => {
  const { numbers: all, unread } = readNumbers(typed.numbers);
  const isKnown = (number: string) => containers.get(number)?.registered != null;
  const numbers = all.filter((number) => !isKnown(number));
  const known = all.filter(isKnown);
  const capacity = readLitres(typed.litres, typed.kind);
  const tare = readTare(typed.tare);
  const owner = typed.owner.trim();
  const faults: Registration["faults"] = {};
  const fault = numbersFault(numbers.length, unread, known);
  if (fault !== null) faults.numbers = fault;
  if (typeof capacity === "string") faults.litres = capacity;
  if (typeof tare === "string") faults.tare = tare;
  const limit = readMarked(typed);
  if (typeof limit === "string") faults.limit = limit;
  const hire = readHire(typed);
  if (typeof hire === "string") faults.hire = hire;
  return {
    numbers,
    known,
    faults,
    facts: {
      kind: typed.kind,
      capacity_ml: typeof capacity === "number" ? capacity : 0,
      ...(typeof tare === "number" ? { tare_g: tare } : {}),
      ...(typeof limit === "number" ? { limit_millibar: limit } : {}),
      ...(owner === "" ? {} : { owner }),
      ...(hire === null || typeof hire === "string" ? {} : { hire }),
      ...(typed.place === "" ? {} : { place: typed.place }),
    },
  };
};

/** "8 firkins: 117, 118, 119 and 5 more", as the button's promise. */
export const registrationWords = (kindName: string, numbers: readonly string[]): string =>
  `${/^\d/.test(kindName) ? `${numbers.length} × ${kindName}` : count(numbers.length, kindName.toLowerCase())}: ${listWords(numbers)}`;
