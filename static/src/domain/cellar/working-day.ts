/** DAY: jobs fall inside the working day, never later than they must. Twin of cellarapp/domain/cellar/working_day.py. */
import { addDays, londonDate, londonInstant, londonMinute } from "../calendar.ts";
import type { Working } from "../working.ts";
import { atMs, msOf } from "./times.ts";

/** Minutes after midnight at which work begins and ends, on a London clock. */
export interface WorkingDay {
  begins: number;
  ends: number;
}

/** The brewery's hours. */
export const askedWorkingDay = (work: Working): WorkingDay => ({
  begins: Math.floor(work.setting("working_day_starts_hour") * 60),
  ends: Math.floor(work.setting("working_day_ends_hour") * 60),
});

/** The time itself, or the last end of work before it. */
function backInto({ begins, ends }: WorkingDay, time: number): number {
  const day = londonDate(atMs(time));
  const minute = londonMinute(atMs(time));
  if (begins <= minute && minute <= ends) return time;
  return msOf(londonInstant(minute > ends ? day : addDays(day, -1), ends));
}

/** The time itself, or the next beginning of work after it. */
function onInto({ begins, ends }: WorkingDay, time: number): number {
  const day = londonDate(atMs(time));
  const minute = londonMinute(atMs(time));
  if (begins <= minute && minute <= ends) return time;
  return msOf(londonInstant(minute < begins ? day : addDays(day, 1), begins));
}

/** DAY-1: the last working time that is early enough; failing that, between the two. */
export function doAt(day: WorkingDay, earliest: number, by: number): number {
  const last = backInto(day, by);
  if (last >= earliest) return last;
  const first = onInto(day, earliest);
  return first <= by ? first : earliest;
}
