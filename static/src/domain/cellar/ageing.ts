/** AGE: how much of its life warm days have cost a beer. Twin of cellarapp/domain/cellar/ageing.py. */
import { outOfRange } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { askedHistory, HISTORY_FIELDS, type HistoryInputs, pieces } from "./temperatures.ts";
import { hoursBetween, msOf } from "./times.ts";
import { DAY_HOURS } from "./units.ts";

/** By which a Q10 is defined. */
const TEN_DEGREES = 10;
/** Nearer to each other two trials say nothing. */
const LEAST_APART_C = 1;
/** Beyond these no beer ages. */
const LEAST_Q10 = 1;
const MOST_Q10 = 100;

export interface AgeingInputs extends HistoryInputs {
  from_at: string;
  until_at: string;
}

export interface Q10Inputs {
  first_days: number;
  first_temp_c: number;
  second_days: number;
  second_temp_c: number;
}

/** AGE-1: how many days at the reference one day at the temperature is worth. */
export const speed = (q10: number, tempC: number, referenceC: number): number =>
  q10 ** ((tempC - referenceC) / TEN_DEGREES);

/** AGE-2: days spent against days passed. Advice: no printed date moves with it. */
export function ageing(inputs: AgeingInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["from_at", "until_at", ...HISTORY_FIELDS]);
  const work = new Working(settings);
  const fromAt = asked.instant("from_at");
  const untilAt = asked.instant("until_at", fromAt, "Not before it began.");
  const q10 = work.setting("ageing_q10");
  const referenceC = work.setting("cellar_temp_c");
  let passed = 0;
  let spent = 0;
  for (const piece of pieces(work, askedHistory(asked), msOf(fromAt), msOf(untilAt))) {
    const days = hoursBetween(piece.fromMs, piece.untilMs) / DAY_HOURS;
    passed += days;
    spent += days * speed(q10, piece.airC, referenceC);
  }
  work.step("Days passed", passed, "days", 2);
  work.step("Days spent = sum of days x Q10^((T - cellar) / 10)", spent, "days", 2);
  work.caution("ageing_is_advice");
  return work.done({
    passed_days: halfUp(passed, 2),
    spent_days: halfUp(spent, 2),
    lost_days: halfUp(Math.max(0, spent - passed), 2),
  });
}

/** AGE-3: the Q10 that a brewery's own two keeping trials give, to set its own figure by. */
export function q10Between(inputs: Q10Inputs, settings: Settings | null = null) {
  const fields = ["first_days", "first_temp_c", "second_days", "second_temp_c"];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const firstDays = asked.number("first_days");
  const secondDays = asked.number("second_days");
  const secondC = asked.number("second_temp_c");
  const apart = secondC - asked.number("first_temp_c");
  if (Math.abs(apart) < LEAST_APART_C) {
    const why = "The two trials lie at least a degree apart.";
    const range = { low: null, high: null, unit: "°C", why };
    throw outOfRange({ field: "second_temp_c", given: secondC, ...range });
  }
  const q10 = (firstDays / secondDays) ** (TEN_DEGREES / apart);
  if (!(LEAST_Q10 <= q10 && q10 <= MOST_Q10)) {
    const why = "Warmer beer would keep longer, or a hundred times less: a trial is mistaken.";
    const range = { low: null, high: null, unit: "days", why };
    throw outOfRange({ field: "second_days", given: secondDays, ...range });
  }
  work.step("Q10 = (first days / second days)^(10 / (second T - first T))", q10, "times", 2);
  return work.done({ q10: halfUp(q10, 2) });
}
