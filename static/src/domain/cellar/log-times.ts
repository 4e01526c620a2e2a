/** LOG: times as loggers write them. Twin of cellarapp/domain/cellar/log_times.py. */
import { londonDate, londonInstant, londonMinute } from "../calendar.ts";
import { DomainError } from "../errors.ts";
import { FIRST_AT, LAST_AT } from "./asked.ts";
import { atMs, clockOf, MONTHS, msOf } from "./times.ts";
import { DAY_MINUTES, HALF_DAY_HOURS, HOUR_MS, MINUTE_MS, THIS_CENTURY } from "./units.ts";

const CLOCK =
  "[ T]+([0-9]{1,2}):([0-9]{2})(?::([0-9]{2})(?:[.,][0-9]{1,9})?)?[ ]*([AaPp][Mm])?" +
  "[ ]*(Z|[+-][0-9]{2}:?[0-9]{2})?";
const YEAR_FIRST = new RegExp(`^([0-9]{4})[-/]([0-9]{1,2})[-/]([0-9]{1,2})${CLOCK}$`);
const DAY_FIRST = new RegExp(`^([0-9]{1,2})[-/.]([0-9]{1,2})[-/.]([0-9]{4}|[0-9]{2})${CLOCK}$`);
const NAMED_MONTH = new RegExp(`^([0-9]{1,2})[- ]([A-Za-z]{3,9})[- ,]+([0-9]{4})${CLOCK}$`);

/** A time as it stands in a file: milliseconds of the clock's reading, and its offset if any. */
export interface Written {
  clockMs: number;
  offsetMs: number | null;
}

/** LOG-1: the day first, or the year first; null where the text is no time that can be. */
export function writtenTime(text: string): Written | null {
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) {
    const [, year, month, day, ...clock] = yearFirst;
    return written(Number(year), Number(month), Number(day), clock);
  }
  const dayFirst = DAY_FIRST.exec(text);
  if (dayFirst) {
    const [, day, month, year = "", ...clock] = dayFirst;
    const full = year.length === 2 ? Number(year) + THIS_CENTURY : Number(year);
    return written(full, Number(month), Number(day), clock);
  }
  const named = NAMED_MONTH.exec(text);
  if (named) {
    const [, day, month = "", year, ...clock] = named;
    return written(Number(year), monthOf(month), Number(day), clock);
  }
  return null;
}

function monthOf(name: string): number {
  const low = name.toLowerCase();
  return MONTHS.findIndex((month) => month.toLowerCase().startsWith(low)) + 1;
}

function written(
  year: number,
  month: number,
  day: number,
  clock: readonly (string | undefined)[],
): Written | null {
  let hour = Number(clock[0]);
  const half = clock[3]?.toLowerCase();
  if (half) {
    if (hour < 1 || hour > HALF_DAY_HOURS) return null;
    hour = (hour % HALF_DAY_HOURS) + (half === "pm" ? HALF_DAY_HOURS : 0);
  }
  const pad = (n: number, width = 2): string => String(n).padStart(width, "0");
  const date = `${pad(year, 4)}-${pad(month)}-${pad(day)}`;
  const text = `${date}T${pad(hour)}:${clock[1]}:${clock[2] ?? "00"}.000Z`;
  if (text < FIRST_AT || text > LAST_AT) return null;
  try {
    return { clockMs: msOf(text), offsetMs: clock[4] ? offsetOf(clock[4]) : null };
  } catch (fault) {
    if (fault instanceof DomainError) return null;
    throw fault;
  }
}

/** Milliseconds that a zone's clock is ahead: Z, +01:00, -0500. */
export function offsetOf(zone: string): number {
  if (zone === "Z") return 0;
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(-2));
  return (zone.startsWith("-") ? -minutes : minutes) * MINUTE_MS;
}

/** LOG-2: the instant meant; null for a time that the clocks leapt over in March. */
export function instantOf(time: Written, beforeMs: number | null): number | null {
  if (time.offsetMs !== null) return time.clockMs - time.offsetMs;
  const text = atMs(time.clockMs);
  const minute = Math.floor(time.clockMs / MINUTE_MS) % DAY_MINUTES;
  const first = msOf(londonInstant(text.slice(0, 10), minute)) + (time.clockMs % MINUTE_MS);
  if (!shows(first, text)) return null;
  const second = first + HOUR_MS;
  if (beforeMs !== null && first <= beforeMs && beforeMs < second && shows(second, text)) {
    return second;
  }
  return first;
}

function shows(time: number, text: string): boolean {
  const instant = atMs(time);
  return text.startsWith(`${londonDate(instant)}T${clockOf(londonMinute(instant))}`);
}
