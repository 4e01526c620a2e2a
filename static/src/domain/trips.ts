/** TRIP: how long a container has been out, and since when it is overdue. Twin of cellarapp/domain/trips.py. */
import { addDays, daysBetween, londonDate } from "./calendar.ts";
import { type Settings, setting } from "./figures.ts";
import type { RecordOf } from "./records.ts";
import type { Trip } from "./standing.ts";

/** TRIP-1: due back so many days after it was sent, each customer its own agreement. */
export function dueOn(
  sentAt: string,
  customer: RecordOf<{ agreed_days: number }> | null,
  settings: Settings | null,
): string {
  const agreed = customer?.fields.agreed_days ?? Math.floor(setting("agreed_days", settings));
  return addDays(londonDate(sentAt), agreed);
}

/** TRIP-2: nights out, counted on London's calendar. */
export function daysOut(trip: Trip, now: string): number {
  return daysBetween(londonDate(trip.since), londonDate(now));
}

/** TRIP-3: days past the day it was due; nought on that day, before it, and with none agreed. */
export function daysOverdue(trip: Trip, now: string): number {
  return trip.due_on === null ? 0 : Math.max(0, daysBetween(trip.due_on, londonDate(now)));
}
