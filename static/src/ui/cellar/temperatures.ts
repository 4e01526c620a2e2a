// The temperature of the brewery's places: what was read last, what is usual, and a logger's file
// as the ledger takes it.

import type { LogFault } from "../../domain/cellar/logger.ts";
import type { DomainError } from "../../domain/errors.ts";
import type { Reading } from "../../domain/readings.ts";
import type { Place } from "../../domain/records.ts";
import { clockWords, degrees, fullTimeWords, timeWords } from "../words.ts";
import { type Places, placesFor } from "./places.ts";

/** The ledger keeps so many of a place, and takes them in one entry. */
const MOST_KEPT = 400;

export interface PlaceTemp {
  id: string;
  name: string;
  latest: Reading | null;
  usualDecidegc: number | null;
}

const latestOf = (place: Place): Reading | null => place.temperatures.at(-1) ?? null;

/** Where beer stands: every place but the yard of the empties, what was read last first. */
export const tempsOf = (places: Places): PlaceTemp[] =>
  placesFor(places)
    .filter(({ role }) => role !== "yard")
    .map(({ id, name }) => {
      const place = places.get(id);
      const latest = place === undefined ? null : latestOf(place);
      return { id, name, latest, usualDecidegc: place?.fields.temp_decidegc ?? null };
    })
    .sort((a, b) => ((b.latest?.[0] ?? "") < (a.latest?.[0] ?? "") ? -1 : 1));

/** "Cold room 11.8 °C at 08:10"; of another day with its day; the usual one where none was read. */
export const tempWords = ({ name, latest, usualDecidegc }: PlaceTemp, now: string): string => {
  if (latest !== null) {
    const [at, decidegc] = latest;
    const when = timeWords(at, now);
    const said = when === clockWords(at) ? `at ${when}` : `on ${when}`;
    return `${name} ${degrees(decidegc)} ${said}`;
  }
  return usualDecidegc === null
    ? `${name}: no temperature yet`
    : `${name} usually ${degrees(usualDecidegc)}`;
};

const DEGREES = /^(-?)(\d{1,2})(?:[.,](\d))?$/;

/** Typed degrees ("11.8", "11,8") in tenths; null where they are none. */
export const typedDecidegc = (text: string): number | null => {
  const found = DEGREES.exec(text.trim());
  if (found === null) return null;
  const tenths = Number(found[2]) * 10 + Number(found[3] ?? 0);
  return found[1] === "-" && tenths !== 0 ? -tenths : tenths;
};

type LogReading = { at: string; reading_temp_c: number };

const asReading = ({ at, reading_temp_c }: LogReading): Reading => [
  at,
  Math.round(reading_temp_c * 10),
];

/** Of each hour the warmest: heat is what harms. */
const warmestOfHours = (readings: readonly Reading[]): Reading[] => {
  const hours = new Map<string, Reading>();
  for (const reading of readings) {
    const hour = reading[0].slice(0, 13);
    const kept = hours.get(hour);
    if (kept === undefined || reading[1] > kept[1]) hours.set(hour, reading);
  }
  return [...hours.values()];
};

/** A logger's readings as one entry: all of them, or the warmest of each hour, the last ones. */
export const forLedger = (readings: readonly LogReading[]): Reading[] => {
  const all = readings.map(asReading);
  return (all.length <= MOST_KEPT ? all : warmestOfHours(all)).slice(-MOST_KEPT);
};

/** "48 readings, 24 Nov, 09:00 to 25 Nov, 08:50." and what could not be read. */
export const logWords = (
  readings: readonly LogReading[],
  faults: readonly LogFault[],
  now: string,
): string => {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return "No reading could be found in it.";
  const span = `${fullTimeWords(first.at, now)} to ${fullTimeWords(last.at, now)}`;
  const bad = faults.length === 0 ? "" : ` Lines that could not be read: ${faults.length}.`;
  return `${readings.length === 1 ? "1 reading" : `${readings.length} readings`}, ${span}.${bad}`;
};

/** Loggers write UTF-8, UTF-16 or what Windows wrote before: a degree sign must not be lost. */
export const asText = (bytes: ArrayBuffer): string => {
  const [first, second] = new Uint8Array(bytes);
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
};

/** Why a whole file is not read, with how long it is where that is the reason. */
export const refusalWords = ({ facts }: DomainError): string => {
  const { why, given, high } = facts;
  return typeof high === "number" ? `${given} lines, ${high} at most. ${why}` : String(why);
};
