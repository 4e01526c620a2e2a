/** STEP: the steps from the stillage to the glass, forward and back. Twin of cellarapp/domain/cellar/timing.py. */
import type { Working } from "../working.ts";
import type { Shape } from "./asked.ts";
import type { Cask } from "./cask.ts";
import { hoursMs, msOf } from "./times.ts";

/** Milliseconds that must lie between one step and the next. */
export interface Gaps {
  settle: number;
  vent: number;
  soft: number;
  saleAfterVent: number;
  saleAfterTap: number;
  taste: number;
}

/** From when it may be vented and sold at the earliest, and how long after stillage it is cool. */
export interface Limits {
  conditionedMs: number;
  inRangeMs: number;
  coolAfterStillage: number | null;
}

/** When each step is done. */
export interface Steps {
  stillage: number;
  vent: number;
  spile: number;
  tap: number;
  sale: number;
}

/** What can hold the sale back, in the order in which it is named. */
export const REASONS = ["conditioning", "temperature", "settling", "venting", "tapping"] as const;

/** What holds the sale back, and until when; the latest of them decides. */
export type Reasons = Record<(typeof REASONS)[number], number>;

/** STEP-1: the brewery's hours; unfined beer settles longer, a keg is only tapped and tasted. */
export function gapsOf(work: Working, shape: Shape, fined: boolean): Gaps {
  const taste = hoursMs(work.setting("taste_before_sale_hours"));
  if (shape === "keg") {
    return { settle: 0, vent: 0, soft: 0, saleAfterVent: 0, saleAfterTap: taste, taste };
  }
  const more = fined ? 0 : work.setting("unfined_more_hours");
  return {
    settle: hoursMs(work.setting("settle_hours") + more),
    vent: hoursMs(work.setting("vent_after_stillage_hours")),
    soft: hoursMs(work.setting("soft_spile_hours")),
    saleAfterVent: hoursMs(work.setting("sale_after_venting_hours")),
    saleAfterTap: hoursMs(work.setting("sale_after_tapping_hours")),
    taste,
  };
}

const done = (instant: string | null): number | null => (instant === null ? null : msOf(instant));

/** Finings and moves that come after the stillage start the settling again. */
const settlesFrom = (cask: Cask, stillage: number): number =>
  Math.max(stillage, done(cask.finedAt) ?? stillage, done(cask.lastMovedAt) ?? stillage);

/** When its beer is at the cellar's temperature, set on the stillage at that time. */
const coolFrom = ({ inRangeMs, coolAfterStillage }: Limits, stillage: number): number =>
  coolAfterStillage === null ? inRangeMs : stillage + coolAfterStillage;

/** STEP-2: each step at its earliest, or when it was done, and what decides the sale. */
export function earliest(
  cask: Cask,
  gaps: Gaps,
  limits: Limits,
  now: number,
): { steps: Steps; reasons: Reasons } {
  const filled = msOf(cask.filledAt);
  let stillage = filled;
  let vent = filled;
  let spile = Math.max(filled, limits.conditionedMs);
  if (cask.shape === "cask") {
    stillage = done(cask.stillagedAt) ?? now;
    const cool = coolFrom(limits, stillage);
    const soonest = Math.max(now, stillage + gaps.vent, limits.conditionedMs, cool);
    vent = done(cask.ventedAt) ?? soonest;
    spile = done(cask.hardSpileAt) ?? Math.max(now, vent + gaps.soft);
  }
  const tap = done(cask.tappedAt) ?? Math.max(now, spile);
  const reasons = {
    conditioning: limits.conditionedMs,
    temperature: coolFrom(limits, stillage),
    settling: settlesFrom(cask, stillage) + gaps.settle,
    venting: vent + gaps.saleAfterVent,
    tapping: tap + gaps.saleAfterTap,
  };
  const sale = Math.max(...REASONS.map((name) => reasons[name]));
  return { steps: { stillage, vent, spile, tap, sale }, reasons };
}

/** How long before venting a cask must be on the stillage. */
export const beforeVent = (gaps: Gaps, limits: Limits): number =>
  Math.max(gaps.vent, limits.coolAfterStillage ?? 0);

/** STEP-3: each step at its latest for a sale at that time. */
export function latest(gaps: Gaps, limits: Limits, sale: number): Steps {
  const tap = sale - gaps.saleAfterTap;
  const vent = Math.min(sale - gaps.saleAfterVent, tap - gaps.soft);
  const stillage = Math.min(sale - gaps.settle, vent - beforeVent(gaps, limits));
  return { stillage, vent, spile: tap, tap, sale };
}
