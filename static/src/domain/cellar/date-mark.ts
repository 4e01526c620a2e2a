/** MARK: the date as the law of Great Britain writes it. Twin of cellarapp/domain/cellar/date_mark.py. */
import { addDays, daysBetween } from "../calendar.ts";
import type { Settings } from "../figures.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { dayAndMonth, monthOf } from "./times.ts";
import { YEAR_MONTHS } from "./units.ts";

/** From the fullest to the barest. */
export const FORMS = ["day_month_year", "day_month", "month_year", "year"] as const;
const FORM_WHY =
  "The date shows day and month, month and year, or the year; barer than its class is not.";
/** How many of the forms each class of length may use. */
const ENOUGH = { day_month: 2, month_year: 3, year: 4 } as const;

export type DateForm = (typeof FORMS)[number];

export interface DateMarkInputs {
  packed_on: string;
  best_before_on: string;
  abv_tenths: number;
  form?: DateForm | null;
}

/** One way in which the date may stand. */
export interface MarkedDate {
  form: DateForm;
  words: string;
  promises_until_on: string;
  gives_up_days: number;
  itself_would_promise_more_days: number;
}

function monthStart(day: string, months: number): string {
  const ahead = Number(day.slice(0, 4)) * YEAR_MONTHS + Number(day.slice(5, 7)) - 1 + months;
  const month = String((ahead % YEAR_MONTHS) + 1).padStart(2, "0");
  return `${Math.floor(ahead / YEAR_MONTHS)}-${month}-01`;
}

const monthEnd = (day: string): string => addDays(monthStart(day, 1), -1);

/** The same day of a later month, or its last where it has no such day. */
export function monthsAfter(day: string, months: number): string {
  const last = monthEnd(monthStart(day, months));
  const date = Math.min(Number(day.slice(8)), Number(last.slice(8)));
  return last.slice(0, 8) + String(date).padStart(2, "0");
}

/** MARK-1: the barest form that is enough: up to 3 months, up to 18 months, or beyond. */
function lengthClass(work: Working, packedOn: string, bestBeforeOn: string): keyof typeof ENOUGH {
  const months = work.figure("date_mark_months");
  if (bestBeforeOn <= monthsAfter(packedOn, months.day_month_up_to)) return "day_month";
  if (bestBeforeOn <= monthsAfter(packedOn, months.month_year_up_to)) return "month_year";
  return "year";
}

/** MARK-2: the day that the form promises: never later than the date itself. */
export function namedUntil(form: DateForm, bestBeforeOn: string): string {
  if (form === "month_year") {
    const end = monthEnd(bestBeforeOn);
    return end === bestBeforeOn ? end : addDays(`${bestBeforeOn.slice(0, 7)}-01`, -1);
  }
  if (form === "year") {
    const year = Number(bestBeforeOn.slice(0, 4));
    return `${bestBeforeOn.endsWith("-12-31") ? year : year - 1}-12-31`;
  }
  return bestBeforeOn;
}

/** The words for a form that promises that day. */
function wordsOf(form: DateForm, until: string): string {
  const year = until.slice(0, 4);
  if (form === "day_month_year") return `Best before ${dayAndMonth(until)} ${year}`;
  if (form === "day_month") return `Best before ${dayAndMonth(until)}`;
  if (form === "month_year") return `Best before end ${monthOf(until)} ${year}`;
  return `Best before end ${year}`;
}

function ownEnd(form: DateForm, bestBeforeOn: string): string {
  if (form === "month_year") return monthEnd(bestBeforeOn);
  return form === "year" ? `${bestBeforeOn.slice(0, 4)}-12-31` : bestBeforeOn;
}

function marked(form: DateForm, bestBeforeOn: string): MarkedDate {
  const until = namedUntil(form, bestBeforeOn);
  return {
    form,
    words: wordsOf(form, until),
    promises_until_on: until,
    gives_up_days: daysBetween(until, bestBeforeOn),
    itself_would_promise_more_days: daysBetween(bestBeforeOn, ownEnd(form, bestBeforeOn)),
  };
}

/** MARK-3: whether a date is needed, the forms that may be used, and the words of one of them. */
export function dateMark(inputs: DateMarkInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["packed_on", "best_before_on", "abv_tenths", "form"]);
  const work = new Working(settings);
  const packedOn = asked.day("packed_on");
  const bestBeforeOn = asked.day("best_before_on", packedOn, "Not before it was packed.");
  const strength = asked.number("abv_tenths");
  const needed = strength < work.setting("date_mark_exempt_from_abv_tenths");
  const enough = lengthClass(work, packedOn, bestBeforeOn);
  const allowed = FORMS.slice(0, ENOUGH[enough]);
  const form = asked.has("form") ? asked.choice("form", allowed, FORM_WHY) : FORMS[0];
  work.step("Keeps = best before - packed", daysBetween(packedOn, bestBeforeOn), "days", 0);
  const chosen = marked(form, bestBeforeOn);
  if (form === "month_year" || form === "year") {
    work.step("Given up = date - last day promised", chosen.gives_up_days, "days", 0);
    work.caution("month_alone_promises_more");
  }
  work.caution("check_food_law");
  const forms = allowed.map((each) => marked(each, bestBeforeOn));
  return work.done({ ...chosen, needed, enough, allowed: forms });
}
