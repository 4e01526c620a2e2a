/** AIR: the air around a container since it was filled. Twin of cellarapp/domain/cellar/temperatures.py. */
import type { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { atMs, hoursMs, msOf } from "./times.ts";

const MOST_READINGS = 20_000;
const MOST_STAYS = 500;
export const HISTORY_FIELDS = ["stays", "readings"] as const;
const OF = ["air", "beer"] as const;
const OF_WHY = "A reading is of the air around the container or of the beer in it.";
const IN_ORDER = "Not before the one above it.";

/** Where it stood, and what was read there or in the beer, each in the order of time. */
export interface HistoryInputs {
  stays?: readonly { since_at: string; place_temp_c?: number | null }[] | null;
  readings?: readonly { at: string; reading_temp_c: number; of?: "air" | "beer" | null }[] | null;
}

/** Where it stood from a time on; null for a place without a temperature of its own. */
export interface Stay {
  sinceMs: number;
  tempC: number | null;
}

/** What a thermometer showed. */
export interface Reading {
  atMs: number;
  tempC: number;
  of: "air" | "beer";
}

export type AirKnownBy = "reading" | "place" | "cellar";

/** The air's temperature from one time to another, and how it is known. */
export interface Piece {
  fromMs: number;
  untilMs: number;
  airC: number;
  how: AirKnownBy;
}

export interface History {
  stays: Stay[];
  readings: Reading[];
}

/** The stays and readings that a rule was given; none where there are none. */
export function askedHistory(asked: CellarAsked): History {
  const stays: Stay[] = [];
  const readings: Reading[] = [];
  const parts = (field: "stays" | "readings", most: number) =>
    asked.has(field) ? asked.parts(field, most, field) : [];
  for (const [n, part] of parts("stays", MOST_STAYS).entries()) {
    const at = `${asked.place}stays[${n}].`;
    const stay = new CellarAsked(part, ["since_at", "place_temp_c"], at);
    const sinceMs = inOrder(stay, "since_at", stays.at(-1)?.sinceMs);
    stays.push({ sinceMs, tempC: stay.maybeNumber("place_temp_c") });
  }
  for (const [n, part] of parts("readings", MOST_READINGS).entries()) {
    const at = `${asked.place}readings[${n}].`;
    const reading = new CellarAsked(part, ["at", "reading_temp_c", "of"], at);
    const time = inOrder(reading, "at", readings.at(-1)?.atMs);
    const of = reading.has("of") ? reading.choice("of", OF, OF_WHY) : "air";
    readings.push({ atMs: time, tempC: reading.number("reading_temp_c"), of });
  }
  return { stays, readings };
}

function inOrder(asked: CellarAsked, field: string, beforeMs: number | undefined): number {
  if (beforeMs === undefined) return msOf(asked.instant(field));
  return msOf(asked.instant(field, atMs(beforeMs), IN_ORDER));
}

/** AIR-1: the air from one time to another, cut wherever it changes. */
export function pieces(work: Working, history: History, fromMs: number, untilMs: number): Piece[] {
  const standsMs = hoursMs(work.setting("reading_stands_hours"));
  const defaultC = work.setting("cellar_temp_c");
  const air = history.readings.filter((reading) => reading.of === "air");
  const cuts = new Set([fromMs, untilMs]);
  for (const stay of history.stays) cuts.add(stay.sinceMs);
  for (const reading of air) cuts.add(reading.atMs).add(reading.atMs + standsMs);
  const times = [...cuts].filter((cut) => fromMs <= cut && cut <= untilMs).sort((a, b) => a - b);
  const found: Piece[] = [];
  let stays = 0;
  let readings = 0;
  for (const [n, start] of times.entries()) {
    const end = times[n + 1];
    if (end === undefined) break;
    while ((history.stays[stays]?.sinceMs ?? end) <= start) stays += 1;
    while ((air[readings]?.atMs ?? end) <= start) readings += 1;
    const [airC, how] = airOf(history.stays[stays - 1], air[readings - 1], start, standsMs) ?? [
      defaultC,
      "cellar",
    ];
    found.push({ fromMs: start, untilMs: end, airC, how });
  }
  return found;
}

/** AIR-2: the air at one time, which is how it is taken to stay until more is known. */
export function airAt(work: Working, history: History, timeMs: number): Piece {
  const [piece] = pieces(work, history, timeMs, timeMs + 1);
  if (piece === undefined) throw new RangeError("a millisecond makes one piece");
  return piece;
}

function airOf(
  stay: Stay | undefined,
  reading: Reading | undefined,
  timeMs: number,
  standsMs: number,
): [number, AirKnownBy] | null {
  const fresh = reading !== undefined && timeMs < reading.atMs + standsMs;
  if (fresh && (stay === undefined || reading.atMs >= stay.sinceMs)) {
    return [reading.tempC, "reading"];
  }
  const tempC = stay?.tempC ?? null;
  return tempC === null ? null : [tempC, "place"];
}
