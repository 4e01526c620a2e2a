/** Instants as milliseconds, and times and days as they are said. Twin of cellarapp/domain/cellar/times.py. */
import {
  addDays,
  daysBetween,
  londonDate,
  londonInstant,
  londonMinute,
  parseInstant,
  writeInstant,
} from "../calendar.ts";
import { halfUp } from "../rounding.ts";
import { HOUR_MS, MINUTE_MS } from "./units.ts";

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
export const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;
export const A_MONDAY = "2000-01-03";
/** Of a minute: what two languages' exp and log may differ by is far less. */
const HAIR = 1 / 1_000_000;

/** Milliseconds since 1970 began. */
export const msOf = (instant: string): number => parseInstant(instant);

/** The instant so many milliseconds after 1970 began. */
export const atMs = (ms: number): string => writeInstant(ms);

/** Hours as milliseconds, to the next whole minute: late rather than early. */
export const hoursMs = (hours: number): number => Math.ceil(hours * 60 - HAIR) * MINUTE_MS;

/** Hours as milliseconds, cut to the whole minute: early rather than late. */
export const hoursMsDown = (hours: number): number => Math.floor(hours * 60 + HAIR) * MINUTE_MS;

/** Hours from one to the other. */
export const hoursBetween = (firstMs: number, lastMs: number): number =>
  (lastMs - firstMs) / HOUR_MS;

/** Midnight at the end of a day in London. */
export const endOf = (day: string): string => londonInstant(addDays(day, 1), 0);

/** January to December of a day. */
export const monthOf = (day: string): string => MONTHS[Number(day.slice(5, 7)) - 1] ?? "";

function weekday(day: string): string {
  const since = daysBetween(A_MONDAY, day) % DAYS.length;
  return DAYS[(since + DAYS.length) % DAYS.length] ?? "";
}

/** 4 July: the day before the month, no ordinals. */
export const dayAndMonth = (day: string): string => `${Number(day.slice(8))} ${monthOf(day)}`;

const shortDay = (day: string): string =>
  `${weekday(day)} ${Number(day.slice(8))} ${monthOf(day).slice(0, 3)}`;

/** Sat 4 Jul 2026. */
export const sayDay = (day: string): string => `${shortDay(day)} ${day.slice(0, 4)}`;

const twoDigits = (n: number): string => String(n).padStart(2, "0");

/** 13:00, of minutes since midnight. */
export const clockOf = (minute: number): string =>
  `${twoDigits(Math.floor(minute / 60))}:${twoDigits(minute % 60)}`;

/** Sat 4 Jul 13:00, on a London clock. */
export const sayAt = (instant: string): string =>
  `${shortDay(londonDate(instant))} ${clockOf(londonMinute(instant))}`;

/** A number as it is said, to hundredths: 12, 12.5, with no nought that says nothing. */
export const plain = (number: number): string => String(halfUp(number, 2));
