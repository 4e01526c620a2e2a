/** Instants in UTC and days on London's calendar. Twin of cellarapp/domain/calendar.py. */
import { notADate, notATime } from "./errors.ts";

const INSTANT = /^(?:19|20|21)\d\d-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const DAY = /^(?:19|20|21)\d\d-\d\d-\d\d$/;
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

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

/** From here on the Summer Time Order 2002 names the nights of every year by one rule. */
const RULE_FROM_MS = Date.UTC(2002, 0, 1);
const [MARCH, OCTOBER] = [2, 9];
/** When summer time begins and ends, by the year: it is asked often. */
const summers = new Map<number, readonly [fromMs: number, untilMs: number]>();

/**
 * By the rule rather than by Intl, which takes an old phone a tenth of a second to get ready, and
 * whose nights are those of the phone's last update.
 */
function londonOffsetMs(ms: number): number {
  if (ms < RULE_FROM_MS) return offsetBeforeRuleMs(ms);
  const year = new Date(ms).getUTCFullYear();
  let summer = summers.get(year);
  if (summer === undefined) {
    summer = [lastSundayAtOne(year, MARCH), lastSundayAtOne(year, OCTOBER)];
    summers.set(year, summer);
  }
  return ms >= summer[0] && ms < summer[1] ? HOUR_MS : 0;
}

/** 01:00 UTC on the last Sunday of a month of 31 days. */
function lastSundayAtOne(year: number, month: number): number {
  const last = Date.UTC(year, month, 31, 1);
  return last - new Date(last).getUTCDay() * DAY_MS;
}

let londonClock: Intl.DateTimeFormat | undefined;

function offsetBeforeRuleMs(ms: number): number {
  londonClock ??= new Intl.DateTimeFormat("en-GB", {
    timeZone: "Europe/London",
    hourCycle: "h23",
    hour: "2-digit",
  });
  const hour = Math.floor(ms / HOUR_MS) * HOUR_MS;
  const shown = Number(londonClock.format(hour));
  return ((shown - new Date(hour).getUTCHours() + 24) % 24) * HOUR_MS;
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
