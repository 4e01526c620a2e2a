/** BEER: the beer's own temperature, which follows the air with a lag. Twin of cellarapp/domain/cellar/beer_temperature.py. */
import { outOfRange } from "../errors.ts";
import type { Working } from "../working.ts";
import { hoursTo, tempAfter } from "./cooling.ts";
import type { History, Piece } from "./temperatures.ts";
import { hoursBetween, hoursMs } from "./times.ts";

/** The range in which beer is served, and how near to its cellar it counts as there. */
export interface Serving {
  lowC: number;
  highC: number;
  nearC: number;
  cellarC: number;
}

/** The beer at the end of its history, its warmest, and since when it has been in range. */
export interface Course {
  beerC: number;
  warmestC: number;
  inRangeSinceMs: number | null;
}

/** The brewery's range. Throws out-of-range where its settings turn it round. */
export function askedServing(work: Working): Serving {
  const lowC = work.setting("cellar_low_c");
  const highC = work.setting("cellar_high_c");
  if (lowC > highC) {
    const why = "The coolest for serving lies above the warmest.";
    const range = { low: null, high: highC, unit: "°C", why };
    throw outOfRange({ field: "cellar_low_c", given: lowC, ...range });
  }
  const nearC = work.setting("cellar_near_c");
  return { lowC, highC, nearC, cellarC: work.setting("cellar_temp_c") };
}

/** The range for beer in that air; at the very edge of the range near is enough. */
export function within(serving: Serving, airC: number): [number, number] {
  const { lowC, highC, nearC } = serving;
  if (!(lowC <= airC && airC <= highC)) return [lowC, highC];
  return [Math.min(lowC, airC - nearC), Math.max(highC, airC + nearC)];
}

/** Hours until beer in that air is in the range; null where it never will be. */
export function hoursFrom(
  serving: Serving,
  beerC: number,
  airC: number,
  tau: number,
): number | null {
  const [low, high] = within(serving, airC);
  if (low <= beerC && beerC <= high) return 0;
  const toC = beerC > high ? high : low;
  const onTheWay = (beerC > toC && toC > airC) || (beerC < toC && toC < airC);
  return onTheWay ? hoursTo(beerC, airC, toC, tau) : null;
}

/** BEER-1: the beer through every piece of air, taken up anew at every reading of the beer. */
export function course(
  serving: Serving,
  history: History,
  air: readonly Piece[],
  fillC: number | null,
  tau: number,
): Course {
  const readC = new Map<number, number>();
  for (const each of history.readings) if (each.of === "beer") readC.set(each.atMs, each.tempC);
  let beerC = fillC ?? air[0]?.airC ?? serving.cellarC;
  let warmestC = beerC;
  let since: number | null = null;
  const times = [...readC.keys()].sort((a, b) => a - b);
  for (const [start, end, airC] of cutAt(times, air)) {
    beerC = readC.get(start) ?? beerC;
    const [low, high] = within(serving, airC);
    since = low <= beerC && beerC <= high ? since : null;
    const hours = hoursFrom(serving, beerC, airC, tau);
    if (since === null && hours !== null && start + hoursMs(hours) <= end) {
      since = start + hoursMs(hours);
    }
    const thenC = tempAfter(beerC, airC, hoursBetween(start, end), tau);
    since = low <= thenC && thenC <= high ? since : null;
    warmestC = Math.max(warmestC, beerC, thenC);
    beerC = thenC;
  }
  return { beerC, warmestC, inRangeSinceMs: since };
}

function cutAt(times: readonly number[], air: readonly Piece[]): [number, number, number][] {
  const cut: [number, number, number][] = [];
  let n = 0;
  for (const piece of air) {
    let start = piece.fromMs;
    for (; n < times.length; n += 1) {
      const time = times[n];
      if (time === undefined || time >= piece.untilMs) break;
      if (time > start) {
        cut.push([start, time, piece.airC]);
        start = time;
      }
    }
    cut.push([start, piece.untilMs, piece.airC]);
  }
  return cut;
}
