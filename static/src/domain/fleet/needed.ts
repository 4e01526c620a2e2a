/** NEED: how many containers of a kind it takes. Twin of cellarapp/domain/fleet/needed.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { askedTrips, type Curve, curve, lastWatched, medianDays, type Trips } from "./survival.ts";

const MOST_OUT = 5000;
const MOST_WEEK_DAYS = 7;
const PERCENT = 100;
const MARGIN = 10;
const TURN_DIGITS = 1;

export interface FleetNeededInputs {
  trips: readonly Trips[];
  out: readonly { days_out: number }[];
  at_home: number;
  fills_a_week: number;
  home_days: number;
  lost_a_year: number;
  value_pounds: number;
}

/** NEED-1: the area below the curve up to a day, and Greenwood's error of it. */
export function restrictedMean(seen: Curve, until: number): { days: number; error: number } {
  const ahead = new Array<number>(until + 1).fill(0);
  for (let day = until - 1; day >= 0; day -= 1) {
    ahead[day] = (ahead[day + 1] ?? 0) + seen.stillOut(day);
  }
  let variance = 0;
  for (const { atRisk, returned, day } of seen.falls) {
    const left = atRisk - returned;
    if (day < until && left > 0) {
      const area = ahead[day] ?? 0;
      variance += (area * area * returned) / (atRisk * left);
    }
  }
  return { days: ahead[0] ?? 0, error: Math.sqrt(variance) };
}

/** NEED-3: the least number that so many are not more than, with that certainty: Poisson's. */
export function enoughFor(mean: number, certainty: number): number {
  const middle = Math.floor(mean);
  const spread = Math.ceil(MARGIN * Math.sqrt(mean)) + MARGIN;
  const first = Math.max(0, middle - spread);
  const below = [1];
  for (let k = middle; k > first; k -= 1) below.push(((below.at(-1) ?? 0) * k) / mean);
  const weights = below.reverse();
  for (let k = middle + 1; k <= middle + spread; k += 1) {
    weights.push(((weights.at(-1) ?? 0) * mean) / k);
  }
  const wanted = weights.reduce((sum, weight) => sum + weight, 0) * certainty;
  let found = 0;
  for (const [k, weight] of weights.entries()) {
    found += weight;
    if (found >= wanted) return first + k;
  }
  return first + weights.length - 1;
}

/** NEED-4: how many are likely at the brewery after each week, filled and empty ones. */
function aheadByWeek(
  seen: Curve,
  out: readonly number[],
  home: number,
  fills: number,
  weeks: number,
): number[] {
  const found: number[] = [];
  let sentBack = 0;
  for (let day = 1; day <= weeks * MOST_WEEK_DAYS; day += 1) {
    sentBack += 1 - seen.stillOut(day - 1);
    if (day % MOST_WEEK_DAYS !== 0) continue;
    let back = 0;
    for (const daysOut of out) {
      const now = seen.stillOut(daysOut);
      back += now === 0 ? 0 : 1 - seen.stillOut(daysOut + day) / now;
    }
    found.push(home + back + fills * sentBack - fills * day);
  }
  return found;
}

/** NEED-5: how often one goes round in a year; null for a turn that is shown as no time. */
function turnsAYear(work: Working, turnDays: number): number | null {
  return halfUp(turnDays, TURN_DIGITS) === 0
    ? null
    : halfUp(work.figure("days_in_year") / turnDays, 1);
}

const NAMES = [
  "trips",
  "out",
  "at_home",
  "fills_a_week",
  "home_days",
  "lost_a_year",
  "value_pounds",
];

/** NEED-2: containers needed = fills a day x days for a whole turn, and a margin (Little's law). */
export function fleetNeeded(inputs: FleetNeededInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, NAMES);
  const work = new Working(settings);
  const trips = askedTrips(asked, "trips");
  const out = asked
    .parts("out", MOST_OUT, "containers")
    .map((part, n) => new Asked(part, ["days_out"], `out[${n}].`).number("days_out"));
  const home = asked.number("at_home");
  const fills = asked.number("fills_a_week") / MOST_WEEK_DAYS;
  const seen = curve(trips);
  const lostAfter = Math.trunc(work.setting("lost_after_days"));
  const mean = restrictedMean(seen, Math.min(lostAfter, lastWatched(trips)));
  work.step("Days out on average = area below the share still out", mean.days, "days", 1);
  const turnDays = mean.days + asked.number("home_days");
  const turn = work.step(
    "Days of a whole turn = out + at the brewery",
    turnDays,
    "days",
    TURN_DIGITS,
  );
  const inRound = "Containers in the round = fills a day x days of a turn";
  const expected = work.step(inRound, fills * turn, "containers", 1);
  const certainty = work.setting("fleet_certainty_pct") / PERCENT;
  const needed = expected > 0 ? enoughFor(expected, certainty) : 0;
  const enough = "Needed, so that there are enough with the certainty chosen";
  work.step(enough, needed, "containers", 0);
  const weeks = Math.trunc(work.setting("fleet_weeks_ahead"));
  const ahead = aheadByWeek(seen, out, home, fills, weeks);
  const short = ahead.findIndex((left) => halfUp(left, 6) < 0);
  const width = work.setting("interval_errors") * mean.error;
  return work.done({
    trips: trips.reduce((sum, one) => sum + one.returned, 0),
    median_days: medianDays(seen.falls),
    mean_days: halfUp(mean.days, 1),
    mean_low_days: halfUp(Math.max(0, mean.days - width), 1),
    mean_high_days: halfUp(mean.days + width, 1),
    turns_a_year: turnsAYear(work, turn),
    expected: halfUp(expected, 1),
    needed,
    have: home + out.length,
    lost_pounds: halfUpWhole(asked.number("lost_a_year") * asked.number("value_pounds")),
    short_in_weeks: short === -1 ? null : short + 1,
    at_home_by_week: ahead.map((left) => halfUp(left, 1)),
  });
}
