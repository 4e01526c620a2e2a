/** FIT: everything that is reckoned of one container. Twin of cellarapp/domain/cellar/outlook.py. */
import type { Working } from "../working.ts";
import { askedServing, type Course, course, hoursFrom, type Serving } from "./beer-temperature.ts";
import type { Cask } from "./cask.ts";
import { type Conditioned, conditionedAt } from "./conditioning.ts";
import { tauHours } from "./cooling.ts";
import { airAt, type Piece, pieces } from "./temperatures.ts";
import { hoursMs, msOf } from "./times.ts";
import {
  earliest,
  type Gaps,
  gapsOf,
  type Limits,
  REASONS,
  type Reasons,
  type Steps,
} from "./timing.ts";

export type Temperature =
  | "not_needed"
  | "in_range_since"
  | "in_range_by_estimate"
  | "coming_into_range"
  | "cellar_out_of_range"
  | "after_stillage";

export type Cause = keyof Reasons | "steps";

export const FORECAST: readonly Temperature[] = [
  "coming_into_range",
  "cellar_out_of_range",
  "after_stillage",
];
export const ESTIMATED: readonly Temperature[] = ["in_range_by_estimate", ...FORECAST];

/** A container's way to the glass. */
export interface Outlook {
  conditioned: Conditioned;
  course: Course;
  air: Piece;
  temperature: Temperature;
  gaps: Gaps;
  limits: Limits;
  steps: Steps;
  reasons: Reasons;
  ventWaits: boolean;
}

/** What the sale waits for, and until when: the first cause, not what merely follows it. */
export function heldBy(seen: Outlook): { cause: Cause; until: number } {
  const { reasons, steps } = seen;
  const last = REASONS.find((name) => reasons[name] === steps.sale) ?? "tapping";
  if (!seen.ventWaits || (last !== "venting" && last !== "tapping")) {
    return { cause: last, until: reasons[last] };
  }
  if (steps.vent === reasons.conditioning) {
    return { cause: "conditioning", until: reasons.conditioning };
  }
  if (steps.vent === reasons.temperature) {
    return { cause: "temperature", until: reasons.temperature };
  }
  return { cause: "steps", until: steps.vent };
}

/** Whether the first cause is more than what was noted and the brewery's hours and days. */
export function isEstimate(seen: Outlook): boolean {
  const { cause } = heldBy(seen);
  if (cause === "temperature") return ESTIMATED.includes(seen.temperature);
  return cause === "conditioning" && seen.conditioned.by === "temperature";
}

/** FIT-1: how far the container has come, and the earliest it can be sold. */
export function outlook(work: Working, cask: Cask, now: string): Outlook {
  const { history } = cask;
  const conditioned = conditionedAt(work, cask.filledAt, cask.conditioningDays, history, now);
  const serving = askedServing(work);
  const start = msOf(cask.filledAt);
  const tau = tauHours(work, cask.holdsMl);
  const time = Math.max(start, msOf(now));
  const gone = course(
    serving,
    history,
    pieces(work, history, start, time + 1),
    cask.fillTempC,
    tau,
  );
  const air = airAt(work, history, time);
  const { inRangeMs, after, temperature } = inRange(cask, serving, gone, air.airC, tau, time);
  const conditionedMs = msOf(conditioned.at);
  const limits = { conditionedMs, inRangeMs, coolAfterStillage: after };
  const gaps = gapsOf(work, cask.shape, cask.fined);
  const { steps, reasons } = earliest(cask, gaps, limits, msOf(now));
  const ventWaits = cask.shape === "cask" && cask.ventedAt === null;
  return { conditioned, course: gone, air, temperature, gaps, limits, steps, reasons, ventWaits };
}

/** FIT-2: when the beer comes to the cellar's temperature, how long after stillage, and how. */
function inRange(
  cask: Cask,
  serving: Serving,
  gone: Course,
  airC: number,
  tau: number,
  now: number,
): { inRangeMs: number; after: number | null; temperature: Temperature } {
  const filled = msOf(cask.filledAt);
  if (cask.shape === "keg") return { inRangeMs: filled, after: null, temperature: "not_needed" };
  if (serving.lowC <= airC && airC <= serving.highC) {
    const since = gone.inRangeSinceMs;
    if (since !== null) {
      const read = cask.history.readings.some(
        (each) => each.of === "beer" && since <= each.atMs && each.atMs <= now,
      );
      const temperature =
        read || since === filled ? "in_range_since" : ("in_range_by_estimate" as const);
      return { inRangeMs: since, after: null, temperature };
    }
    const hours = hoursFrom(serving, gone.beerC, airC, tau) ?? 0;
    return { inRangeMs: now + hoursMs(hours), after: null, temperature: "coming_into_range" };
  }
  const { cellarC } = serving;
  if (cask.stillagedAt !== null) {
    const hours = hoursFrom(serving, gone.beerC, cellarC, tau) ?? 0;
    return { inRangeMs: now + hoursMs(hours), after: null, temperature: "cellar_out_of_range" };
  }
  const airIsFarther = Math.abs(airC - cellarC) > Math.abs(gone.beerC - cellarC);
  const hours = hoursFrom(serving, airIsFarther ? airC : gone.beerC, cellarC, tau) ?? 0;
  return { inRangeMs: filled, after: hoursMs(hours), temperature: "after_stillage" };
}
