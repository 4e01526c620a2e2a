// The day for which containers are promised.

import { addDays } from "../../domain/calendar.ts";

/** The next such weekday after today, Monday being 0. */
export const nextWeekday = (today: string, weekday: number): string => {
  const sundayIsZero = new Date(`${today}T12:00Z`).getUTCDay();
  const now = (sundayIsZero + 6) % 7;
  return addDays(today, ((weekday - now + 6) % 7) + 1);
};

/** What is wrong with a day that was typed; null when nothing is. */
export const promiseFault = (day: string, today: string): string | null => {
  if (!/^\d{4}-\d\d-\d\d$/.test(day)) return "Choose the day that was promised.";
  return day < today ? "That day has gone by." : null;
};
