/** OUT: when a cask runs out, and when the next one must be vented. Twin of cellarapp/domain/cellar/run_out.py. */
import { pintMl } from "../bench/units.ts";
import { outOfRange } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked, FIRST_AT } from "./asked.ts";
import { askedOpenHours, type OpenHours } from "./open-hours.ts";
import { pints } from "./sediment.ts";
import { atMs, hoursBetween, hoursMsDown, msOf, sayAt } from "./times.ts";
import { gapsOf, latest } from "./timing.ts";
import { DAY_HOURS, HOUR_MS } from "./units.ts";
import { askedWorkingDay, doAt } from "./working-day.ts";

const MOST_DIPS = 500;
const LEAST_DIPS = 2;
const IN_ORDER = "After the dip above it.";
const FALLS = "Beer does not come back into a cask: no more than at the dip above it.";
const NEXT_FINED_WHY = "Whether the next cask was fined.";

export interface RunOutInputs {
  now: string;
  dips: readonly { at: string; left_ml: number }[];
  sediment_ml?: number | null;
  off_by_at?: string | null;
  next_fined?: boolean | null;
}

/** What was left at a time. */
interface Dip {
  at: number;
  leftMl: number;
}

/** The steps of the next cask, back from the hour at which this one may be gone. */
export interface NextCask {
  stillage_by_at: string;
  vent_by_at: string;
  vent_at: string;
  tap_by_at: string;
  late: boolean;
  sold_from_at: string;
  says: string;
}

/** At least two dips, in the order of time, none above the one before. */
function askedDips(asked: CellarAsked): [Dip, Dip, ...Dip[]] {
  const dips: Dip[] = [];
  const given = asked.parts("dips", MOST_DIPS, "dips");
  for (const [n, part] of given.entries()) {
    const dip = new CellarAsked(part, ["at", "left_ml"], `dips[${n}].`);
    const before = dips.at(-1);
    const low = before ? atMs(before.at + 1) : FIRST_AT;
    const at = msOf(dip.instant("at", low, before ? IN_ORDER : "A time in UTC."));
    const leftMl = dip.number("left_ml");
    if (before && leftMl > before.leftMl) {
      const range = { low: 0, high: before.leftMl, unit: "whole mL", why: FALLS };
      throw outOfRange({ field: `dips[${n}].left_ml`, given: leftMl, ...range });
    }
    dips.push({ at, leftMl });
  }
  const [first, second, ...more] = dips;
  if (first && second) return [first, second, ...more];
  const range = { low: LEAST_DIPS, high: MOST_DIPS, unit: "whole dips" };
  throw outOfRange({ field: "dips", given: dips.length, ...range, why: "A pace takes two dips." });
}

type Dips = readonly [Dip, ...Dip[]];

/** OUT-1: what is drawn in an hour that the bar is open; null of dips too close to tell. */
function paceMlPerHour(dips: Dips, leastHours: number, bar: OpenHours): number | null {
  const [first] = dips;
  const last = dips.at(-1) ?? first;
  const hours = bar.hoursBetween(first.at, last.at);
  return hours >= leastHours ? (first.leftMl - last.leftMl) / hours : null;
}

/** The last dip and the one that it tells the latest pace with, if any is so long before. */
function latestDips(dips: Dips, leastHours: number, bar: OpenHours): Dips {
  const last = dips.at(-1) ?? dips[0];
  const before = [...dips].reverse().find((dip) => bar.hoursBetween(dip.at, last.at) >= leastHours);
  return before === undefined ? [last] : [before, last];
}

/** OUT-2: when nothing drinkable is left; null at a pace that would last beyond belief. */
function runsOutMs(
  work: Working,
  last: Dip,
  drinkableMl: number,
  pace: number | null,
  bar: OpenHours,
): number | null {
  if (drinkableMl <= 0) return last.at;
  if (pace === null) return null;
  const believedMs = hoursMsDown(work.setting("run_out_believed_days") * DAY_HOURS);
  if (pace * bar.hoursBetween(last.at, last.at + believedMs) < drinkableMl) return null;
  return bar.afterMs(last.at, hoursMsDown(drinkableMl / pace));
}

/** OUT-3: the steps of the next cask, back from the hour at which it is wanted. */
function nextCask(work: Working, sale: number, now: number, fined: boolean): NextCask {
  const day = askedWorkingDay(work);
  const limits = { conditionedMs: now, inRangeMs: now, coolAfterStillage: null };
  const by = latest(gapsOf(work, "cask", fined), limits, sale);
  const soldFromAt = atMs(Math.max(sale, now + sale - by.stillage));
  const vent = by.vent >= now ? doAt(day, now, by.vent) : now;
  let says = `Vent the next one ${sayAt(atMs(vent))}, by ${sayAt(atMs(by.vent))} at the latest`;
  if (by.stillage < now) says += "; it must be on the stillage already";
  if (by.vent < now) {
    says = `Vent the next one at once; set on the stillage now it can be sold from ${sayAt(soldFromAt)}`;
  }
  return {
    stillage_by_at: atMs(by.stillage),
    vent_by_at: atMs(by.vent),
    vent_at: atMs(vent),
    tap_by_at: atMs(by.tap),
    late: by.vent < now,
    sold_from_at: soldFromAt,
    says: `${says}.`,
  };
}

/** OUT-4: when it runs out at its pace since the first dip, and at the latest pace. */
export function runOut(inputs: RunOutInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["now", "dips", "sediment_ml", "off_by_at", "next_fined"]);
  const work = new Working(settings);
  const now = msOf(asked.instant("now"));
  const dips = askedDips(asked);
  const offBy = asked.maybeInstant("off_by_at");
  const fined = asked.yes("next_fined", NEXT_FINED_WHY, true);
  const first = dips[0];
  const last = dips.at(-1) ?? first;
  const drinkableMl = Math.max(0, last.leftMl - (asked.maybeNumber("sediment_ml") ?? 0));
  work.step("Drinkable at the last dip = left - sediment", drinkableMl, "mL", 0);
  const leastHours = work.setting("run_out_least_hours");
  const bar = askedOpenHours(work);
  const overall = paceMlPerHour(dips, leastHours, bar);
  const lately = paceMlPerHour(latestDips(dips, leastHours, bar), leastHours, bar);
  const hours = bar.spans.length > 0 ? "open hours" : "hours";
  if (overall !== null && lately !== null) {
    work.step(`Pace = drawn between first and last dip / ${hours} between`, overall, "mL/h", 0);
    const says = `Latest pace = drawn since the last dip far enough back / ${hours}`;
    work.step(says, lately, "mL/h", 0);
  }
  if (hoursBetween(first.at, last.at) < work.setting("run_out_span_hours")) {
    work.caution("pace_from_short_span");
  }
  const byOverall = runsOutMs(work, last, drinkableMl, overall, bar);
  const byLately = runsOutMs(work, last, drinkableMl, lately, bar);
  const ends = [byOverall, byLately].filter((time) => time !== null);
  const soonest = ends.length > 0 ? Math.min(...ends) : null;
  const leaves = [soonest, offBy === null ? null : msOf(offBy)].filter((time) => time !== null);
  const gone = leaves.length > 0 ? Math.min(...leaves) : null;
  const wanted = gone === null ? null : bar.nextOpen(gone);
  if (gone !== null) work.caution("beer_decides");
  return work.done({
    drinkable_ml: drinkableMl,
    drinkable_pints: pints(drinkableMl),
    pints_a_day: overall === null ? null : halfUp((overall * bar.aDay()) / pintMl(), 1),
    runs_out_at: byOverall === null ? null : atMs(byOverall),
    soonest_at: soonest === null ? null : atMs(soonest),
    left_hours: soonest === null ? null : halfUp((soonest - now) / HOUR_MS, 1),
    gone_at: gone === null ? null : atMs(gone),
    next_wanted_at: wanted === null ? null : atMs(wanted),
    next: wanted === null ? null : nextCask(work, wanted, now, fined),
  });
}
