// Days and times in words, always on London's clock, whatever the phone's own zone.

import { daysBetween, londonDate, londonMinute } from "../../domain/calendar.ts";

// Names of our own: browsers do not agree on the short form of September.
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

const weekday = (day: string): string => DAYS[new Date(`${day}T12:00Z`).getUTCDay()] ?? "";
const dayMonth = (day: string): string =>
  `${Number(day.slice(8))} ${MONTHS[Number(day.slice(5, 7)) - 1]}`;

/** Time on the clock: "09:40". */
export const clockWords = (time: string): string => {
  const minute = londonMinute(time);
  return [Math.floor(minute / 60), minute % 60].map((n) => String(n).padStart(2, "0")).join(":");
};

/** A day in words: "today", "Thu" within a week either way, else "2 Oct", with its year if another. */
export const dayWords = (day: string, now: string): string => {
  const away = daysBetween(londonDate(now), day);
  if (away === 0) return "today";
  if (away === 1) return "tomorrow";
  if (away === -1) return "yesterday";
  return Math.abs(away) < 7 ? weekday(day) : dateWords(day, now);
};

/** A day for a label, without "today": "18 Dec" or "18 Dec 2027". */
export const dateWords = (day: string, now: string): string =>
  day.slice(0, 4) === londonDate(now).slice(0, 4)
    ? dayMonth(day)
    : `${dayMonth(day)} ${day.slice(0, 4)}`;

/** An instant: "09:40" today, "Tue 09:40" within a week, "2 Oct" beyond, where the hour matters no more. */
export const timeWords = (time: string, now: string): string => {
  const day = londonDate(time);
  const away = Math.abs(daysBetween(londonDate(now), day));
  if (away === 0) return clockWords(time);
  return away < 7 ? `${weekday(day)} ${clockWords(time)}` : dateWords(day, now);
};

/** An instant in full, for a history: "2 Oct, 09:40". */
export const fullTimeWords = (time: string, now: string): string =>
  daysBetween(londonDate(time), londonDate(now)) === 0
    ? clockWords(time)
    : `${dateWords(londonDate(time), now)}, ${clockWords(time)}`;

/** How long ago, roughly: "just now", "12 min", "3 h", "5 days". */
export const ageWords = (since: string, now: string): string => {
  const minutes = Math.max(0, Math.floor((Date.parse(now) - Date.parse(since)) / 60_000));
  if (minutes < 1) return "just now";
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 48 * 60) return `${Math.floor(minutes / 60)} h`;
  return `${Math.floor(minutes / 1440)} days`;
};
