/** SHELF: how long a beer keeps, and what is left on delivery. Twin of cellarapp/domain/cellar/shelf_life.py. */
import { addDays, daysBetween } from "../calendar.ts";
import type { FigureId, Settings } from "../figures.ts";
import { Working } from "../working.ts";
import { CellarAsked, type Shape } from "./asked.ts";
import { windowDays } from "./days.ts";
import { sayDay } from "./times.ts";

const COUNTED_FROM = ["racking", "relabelling", "despatch"] as const;
const COUNTED_FROM_WHY = "Brewers differ in where the days begin; say which it is.";
const LIFE_ON_DELIVERY: Record<Shape, FigureId> = {
  cask: "life_on_delivery_cask_days",
  keg: "life_on_delivery_keg_days",
};

export interface BestBeforeInputs {
  from_on: string;
  counted_from?: (typeof COUNTED_FROM)[number] | null;
  shape?: Shape | null;
  abv_tenths?: number | null;
  window_days?: number | null;
}

export interface LifeLeftInputs {
  best_before_on: string;
  delivered_on: string;
  shape: Shape;
  expected_days?: number | null;
}

/** SHELF-2: the day to which a beer keeps, counted from racking unless said otherwise. */
export function bestBefore(inputs: BestBeforeInputs, settings: Settings | null = null) {
  const fields = ["from_on", "counted_from", "shape", "abv_tenths", "window_days"];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const fromOn = asked.day("from_on");
  const countedFrom = asked.has("counted_from")
    ? asked.choice("counted_from", COUNTED_FROM, COUNTED_FROM_WHY)
    : "racking";
  const abvTenths = asked.maybeNumber("abv_tenths");
  const own = asked.maybeNumber("window_days");
  const days = windowDays(work, asked.has("shape") ? asked.shape() : null, abvTenths, own);
  const bestBeforeOn = addDays(fromOn, days);
  const says = `Best before = ${countedFrom} ${sayDay(fromOn)} + window: ${sayDay(bestBeforeOn)}`;
  work.step(says, days, "days", 0);
  work.caution("best_before_is_no_use_by");
  return work.done({
    best_before_on: bestBeforeOn,
    window_days: days,
    from_on: fromOn,
    counted_from: countedFrom,
  });
}

/** SHELF-3: days left on the day of delivery, against what customers expect. */
export function lifeLeft(inputs: LifeLeftInputs, settings: Settings | null = null) {
  const fields = ["best_before_on", "delivered_on", "shape", "expected_days"];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const bestBeforeOn = asked.day("best_before_on");
  const shape = asked.shape();
  const left = daysBetween(asked.day("delivered_on"), bestBeforeOn);
  const own = asked.maybeNumber("expected_days");
  const expected = own ?? Math.floor(work.setting(LIFE_ON_DELIVERY[shape]));
  work.step("Days left = best before - delivery", left, "days", 0);
  work.step("Expected on delivery", expected, "days", 0);
  if (left < expected) work.caution("short_life_on_delivery");
  return work.done({
    left_days: left,
    expected_days: expected,
    short_by_days: Math.max(0, expected - left),
    deliver_by_on: addDays(bestBeforeOn, -expected),
  });
}
