/** KM: how long containers stay out. Twin of cellarapp/domain/fleet/survival.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";

const MOST_TRIPS = 20_000;
const PERCENT = 100;

/** Trips that are alike: on record from the same day out, and watched for as many days. */
export interface Trips {
  entered_day: number;
  days: number;
  returned: number;
  /** Not returned by then: still out, or ended in another way. */
  open: number;
}

/** A day out on which containers came back, and the share that is still out after it. */
export interface Fall {
  day: number;
  atRisk: number;
  returned: number;
  stillOut: number;
  greenwood: number;
}

export interface ReturnChanceInputs {
  trips: readonly Trips[];
  days_out: number;
}

/** The trips in a field, by days. */
export function askedTrips(asked: Asked, field: string): Trips[] {
  return asked.parts(field, MOST_TRIPS, "trips").map((part, n) => {
    const names = ["entered_day", "days", "returned", "open"];
    const one = new Asked(part, names, `${asked.at}${field}[${n}].`);
    return {
      entered_day: one.number("entered_day"),
      days: one.number("days"),
      returned: one.number("returned"),
      open: one.number("open"),
    };
  });
}

/** The falls, and the share still out after each day; the last of them holds ever after. */
export class Curve {
  readonly falls: readonly Fall[];
  readonly shares: readonly number[];

  constructor(falls: readonly Fall[], shares: readonly number[]) {
    this.falls = falls;
    this.shares = shares;
  }

  /** KM-1: the share still out after so many days. */
  stillOut(day: number): number {
    return this.shares[Math.min(day, this.shares.length - 1)] ?? 1;
  }
}

/** KM-1: the share still out after each day on which any came back. */
export function curve(trips: readonly Trips[]): Curve {
  const falls: Fall[] = [];
  const shares = [1];
  let stillOut = 1;
  let greenwood = 0;
  const days = new Set(trips.filter((one) => one.returned > 0).map((one) => one.days));
  for (const day of [...days].sort((a, b) => a - b)) {
    const watched = trips.filter(
      (one) => one.days >= day && (one.entered_day === 0 || one.entered_day < day),
    );
    const atRisk = watched.reduce((sum, one) => sum + one.returned + one.open, 0);
    const returned = watched.reduce((sum, one) => sum + (one.days === day ? one.returned : 0), 0);
    if (returned === 0) continue;
    const left = atRisk - returned;
    while (shares.length < day) shares.push(stillOut);
    stillOut *= left / atRisk;
    greenwood += left > 0 ? returned / (atRisk * left) : Number.POSITIVE_INFINITY;
    shares[day] = stillOut;
    falls.push({ day, atRisk, returned, stillOut, greenwood });
  }
  return new Curve(falls, shares);
}

/** The longest that any trip has been watched, days. */
export function lastWatched(trips: readonly Trips[]): number {
  return trips.reduce((longest, one) => Math.max(longest, one.days), 0);
}

/** KM-2: the share of those out after `day` days that is out later too; null where none stays. */
export function stillOutLater(seen: Curve, day: number, within: number): number | null {
  const now = seen.stillOut(day);
  return now === 0 ? null : seen.stillOut(day + within) / now;
}

/** KM-3: by when half are back; null while fewer than half are known to come back. */
export function medianDays(falls: readonly Fall[]): number | null {
  return falls.find((fall) => fall.stillOut <= 1 / 2)?.day ?? null;
}

/** KM-4: Greenwood's standard error of a share. */
export function standardError(share: number, greenwood: number): number {
  return share === 0 ? 0 : share * Math.sqrt(greenwood);
}

function between(falls: readonly Fall[], after: number, until: number): number {
  return falls
    .filter((fall) => after < fall.day && fall.day <= until && fall.atRisk > fall.returned)
    .reduce((sum, fall) => sum + fall.returned / (fall.atRisk * (fall.atRisk - fall.returned)), 0);
}

/** KM-2: the chance that a container that has been out so long comes back within a fortnight. */
export function returnChance(inputs: ReturnChanceInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["trips", "days_out"]);
  const work = new Working(settings);
  const trips = askedTrips(asked, "trips");
  const day = asked.number("days_out");
  const within = Math.trunc(work.setting("chance_within_days"));
  const seen = curve(trips);
  const { falls } = seen;
  const later = stillOutLater(seen, day, within);
  const enough = day + within <= lastWatched(trips);
  work.step(
    "Still out after as many days = product of (1 - returned / at risk)",
    seen.stillOut(day),
    "of all",
    4,
  );
  work.step("Still out at the end of the time", seen.stillOut(day + within), "of all", 4);
  let backPct: number | null = null;
  let errorPct: number | null = null;
  if (later !== null && enough) {
    const back = work.step("Back by then = 1 - later / now", 1 - later, "", 4);
    backPct = halfUp(back * PERCENT, 3);
    errorPct = halfUp(standardError(later, between(falls, day, day + within)) * PERCENT, 3);
  }
  return work.done({
    back_pct: backPct,
    error_pct: errorPct,
    median_days: medianDays(falls),
    curve: falls.map((fall) => ({
      day: fall.day,
      at_risk: fall.atRisk,
      returned: fall.returned,
      still_out_pct: halfUp(fall.stillOut * PERCENT, 4),
      error_pct: halfUp(standardError(fall.stillOut, fall.greenwood) * PERCENT, 4),
    })),
  });
}
