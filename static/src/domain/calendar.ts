/** Instants in UTC and days on London's calendar. Twin of cellarapp/domain/calendar.py. */
import { notADate, notATime } from "./errors.ts";

const INSTANT = /^(?:19|20|21)\d\d-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const DAY = /^(?:19|20|21)\d\d-\d\d-\d\d$/;
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

const londonClock = new Intl.DateTimeFormat("en-GB", {
  timeZone: "Europe/London",
  hourCycle: "h23",
  hour: "2-digit",
});

/** Milliseconds of the instant that the text says. Throws not-a-time for any other form. */
export function parseInstant(text: string): number {
  const ms = INSTANT.test(text) ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(ms) || new Date(ms).toISOString() !== text) throw notATime(text);
  return ms;
}

/** The one way an instant is written: UTC, cut to milliseconds. */
export function writeInstant(ms: number): string {
  return new Date(ms).toISOString();
}

function parseDay(text: string): number {
  const ms = DAY.test(text) ? Date.parse(`${text}T00:00:00.000Z`) : Number.NaN;
  if (Number.isNaN(ms) || writeDay(ms) !== text) throw notADate(text);
  return ms;
}

function writeDay(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

/** The offset changes on the hour only, so what Intl says of an hour is kept: it is asked often. */
const offsets = new Map<number, number>();

function londonOffsetMs(ms: number): number {
  const hour = Math.floor(ms / HOUR_MS);
  const known = offsets.get(hour);
  if (known !== undefined) return known;
  const shown = Number(londonClock.format(hour * HOUR_MS));
  const offset = ((shown - new Date(hour * HOUR_MS).getUTCHours() + 24) % 24) * HOUR_MS;
  offsets.set(hour, offset);
  return offset;
}

/** The day it was in London at that instant. */
export function londonDate(instant: string): string {
  const ms = parseInstant(instant);
  return writeDay(ms + londonOffsetMs(ms));
}

/** The day that many days later, or earlier when negative. */
export function addDays(day: string, days: number): string {
  return writeDay(parseDay(day) + days * DAY_MS);
}

/** Whole days from the first day to the last; negative when the last comes before. */
export function daysBetween(first: string, last: string): number {
  return (parseDay(last) - parseDay(first)) / DAY_MS;
}

/** The same time on a London clock that many days later; a time the clocks leap over is winter's. */
export function sameTimeAfter(instant: string, days: number): string {
  const ms = parseInstant(instant);
  if (days === 0) return instant;
  return onLondonClock(ms + londonOffsetMs(ms) + days * DAY_MS);
}

/** The instant at which a London clock shows the time that would be this one in UTC. */
function onLondonClock(wall: number): string {
  const inSummer = wall - HOUR_MS;
  return writeInstant(londonOffsetMs(inSummer) === HOUR_MS ? inSummer : wall);
}

/** Minutes on a London clock since midnight, at that instant. */
export function londonMinute(instant: string): number {
  const ms = parseInstant(instant);
  return ((Math.floor((ms + londonOffsetMs(ms)) / 60_000) % 1440) + 1440) % 1440;
}

/** The instant at which a London clock shows so many minutes since that day's midnight. */
export function londonInstant(day: string, minute: number): string {
  return onLondonClock(parseDay(day) + minute * 60_000);
}
