/** FIT: from when a container is fit for what, until when, and why. Twin of cellarapp/domain/cellar/ready.py. */
import type { Settings } from "../figures.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { askedCask, CASK_FIELDS, type Cask, type CaskInputs } from "./cask.ts";
import { afterDays, daysOnSale } from "./days.ts";
import { FORECAST, type Outlook, outlook } from "./outlook.ts";
import {
  bestReason,
  conditionedReason,
  coolReason,
  offReason,
  readyReason,
  settledReason,
} from "./reasons.ts";
import { atMs, endOf, msOf } from "./times.ts";
import { HOUR_MS } from "./units.ts";

export interface ReadyInputs extends CaskInputs {
  now: string;
}

/** FIT-3: what has happened to the container that a person should mind. */
export function warn(work: Working, cask: Cask, seen: Outlook): void {
  const { warmestC } = seen.course;
  if (warmestC > work.figure("vigorous_secondary_above_c") && cask.ventedAt === null) {
    work.caution("too_warm_for_venting");
  }
  if (cask.fined && warmestC > work.setting("finings_ruined_above_c")) {
    work.caution("finings_may_be_ruined");
  }
  if (cask.fined && cask.moves > work.setting("resettles_most")) {
    work.caution("moved_often_after_fining");
  }
  if (FORECAST.includes(seen.temperature)) work.caution("cooling_is_estimate");
  if (cask.shape === "cask") {
    work.caution("beer_decides");
    if (!cask.fined) work.caution("unfined_may_not_clear");
  }
}

/** FIT-4: conditioned, cool, settled and ready from; best until, off by; each with a reason. */
export function ready(inputs: ReadyInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["now", ...CASK_FIELDS]);
  const work = new Working(settings);
  const now = asked.instant("now");
  const cask = askedCask(work, asked);
  const seen = outlook(work, cask, now);
  warn(work, cask, seen);
  const days = daysOnSale(work, cask.shape, cask.onSaleDays);
  const sinceAt = cask.firstDrawnAt ?? cask.tappedAt;
  const offAt = sinceAt === null ? null : afterDays(sinceAt, days);
  const bestUntilAt = cask.bestBeforeOn === null ? null : endOf(cask.bestBeforeOn);
  const coolAt = atMs(seen.reasons.temperature);
  if (offAt !== null && bestUntilAt !== null && msOf(offAt) > msOf(bestUntilAt)) {
    work.caution("best_before_ends_on_sale");
  }
  const { course, gaps, reasons, steps } = seen;
  work.step("Days of conditioning", cask.conditioningDays, "days", 0);
  work.step("Beer now, following the air with its lag", course.beerC, "°C", 1);
  work.step("Settles on the stillage", gaps.settle / HOUR_MS, "hours", 1);
  work.step("From venting to sale", gaps.saleAfterVent / HOUR_MS, "hours", 1);
  work.step("From tapping to sale", gaps.saleAfterTap / HOUR_MS, "hours", 1);
  return work.done({
    conditioned_from_at: seen.conditioned.at,
    cool_from_at: coolAt,
    stillaged_at: cask.stillagedAt,
    settled_from_at: atMs(reasons.settling),
    ready_from_at: atMs(steps.sale),
    is_ready: steps.sale <= msOf(now),
    best_until_at: bestUntilAt,
    off_by_at: offAt,
    beer_temp_c: halfUp(course.beerC, 1),
    warmest_temp_c: halfUp(course.warmestC, 1),
    reasons: [
      conditionedReason(cask, seen),
      coolReason(seen, coolAt),
      settledReason(cask, seen),
      readyReason(seen),
      bestReason(cask),
      offReason(cask, days, offAt),
    ],
  });
}
