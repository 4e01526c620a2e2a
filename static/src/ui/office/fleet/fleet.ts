// The fleet by kind: what stands where, how often it goes out, and what the reckoning is asked.

import { daysBetween, londonDate } from "../../../domain/calendar.ts";
import { type FigureId, type Settings, setting } from "../../../domain/figures.ts";
import type { FleetNeededInputs } from "../../../domain/fleet/needed.ts";
import type { Trips } from "../../../domain/fleet/survival.ts";
import { endedTrips, type TripCounts } from "../../../domain/fleet/trip-counts.ts";
import type { Standing, Trip } from "../../../domain/standing.ts";
import { daysOut } from "../../../domain/trips.ts";

export interface Fleet {
  kind: string;
  full: number;
  empty: number;
  /** Kept out of use at the brewery. */
  aside: number;
  missing: number;
  out: Trip[];
  /** Gone missing within a year. */
  lostAYear: number;
  sentAWeek: number;
  trips: Trips[];
}

const YEAR_DAYS = 365;
const YEAR_MONTHS = 12;
const WEEKS_IN_MONTH = YEAR_DAYS / 7 / YEAR_MONTHS;

/** Months as numbers that can be subtracted. */
const monthNumber = (month: string): number =>
  Number(month.slice(0, 4)) * YEAR_MONTHS + Number(month.slice(5, 7));

/** Sent in a week, by the whole months of the last year that are on record. */
const sentAWeek = (
  counts: readonly TripCounts[],
  kind: string,
  out: readonly Trip[],
  now: string,
): number => {
  const begun = [
    ...counts.flatMap((one) => Object.entries(one.begun[kind] ?? {})),
    ...out.map(({ since }): [string, number] => [londonDate(since).slice(0, 7), 1]),
  ].map(([month, n]): [number, number] => [monthNumber(month), n]);
  const thisMonth = monthNumber(londonDate(now));
  const first = Math.min(...begun.map(([month]) => month));
  const months = Math.min(YEAR_MONTHS, thisMonth - first);
  if (!(months > 0)) return 0;
  const sent = begun
    .filter(([month]) => month < thisMonth && month >= thisMonth - months)
    .reduce((sum, [, n]) => sum + n, 0);
  return sent / (months * WEEKS_IN_MONTH);
};

const entered = ({ since, on_record_since }: Trip): number =>
  on_record_since === null ? 0 : Math.max(0, daysBetween(londonDate(since), on_record_since));

/** The brewery's own containers of one kind; those of others and the scrapped are left out. */
export const fleetOf = (
  kind: string,
  containers: Iterable<Standing>,
  trips: ReadonlyMap<string, TripCounts>,
  now: string,
): Fleet => {
  const own = [...containers].filter(
    (one) => one.kind === kind && one.owner === null && one.held?.state !== "scrapped",
  );
  const missing = own.filter(({ held }) => held?.state === "missing");
  const usable = own.filter(({ held }) => held === null);
  const out = usable.flatMap(({ trip }) => (trip === null ? [] : [trip]));
  const home = usable.filter(({ trip }) => trip === null);
  const full = home.filter(({ contents }) => contents !== null).length;
  const counts = [...trips.values()];
  const open = [...out, ...missing.flatMap(({ trip }) => (trip === null ? [] : [trip]))];
  return {
    kind,
    full,
    empty: home.length - full,
    aside: own.filter(({ held }) => held?.state === "set_aside").length,
    missing: missing.length,
    out,
    lostAYear: missing.filter(
      ({ held }) => daysBetween(londonDate(held?.since ?? now), londonDate(now)) < YEAR_DAYS,
    ).length,
    sentAWeek: sentAWeek(counts, kind, open, now),
    trips: [
      ...counts.flatMap((one) => endedTrips(one, kind)),
      ...open.map((trip) => ({
        entered_day: entered(trip),
        days: daysOut(trip, now),
        returned: 0,
        open: 1,
      })),
    ],
  };
};

export const kindsInUse = (containers: Iterable<Standing>): string[] => [
  ...new Set(
    [...containers].flatMap(({ kind, registered, owner }) =>
      kind !== null && registered !== null && owner === null ? [kind] : [],
    ),
  ),
];

/**
 * Days that one stands at the brewery, as stock and sending have it (Little's law). Null where too
 * few went out to judge by, or so seldom that most only stand there: then it says nothing of a turn.
 */
export const standingDays = (
  { full, empty, sentAWeek: sent, trips }: Fleet,
  own: Settings,
): number | null => {
  const begun = trips.reduce((sum, { returned, open }) => sum + returned + open, 0);
  const days = Math.round(((full + empty) / sent) * 7);
  return begun < setting("own_trips_enough", own) || days > YEAR_DAYS ? null : days;
};

export const askedOf = (
  fleet: Fleet,
  { fillsAWeek, homeDays }: { fillsAWeek: number; homeDays: number },
  now: string,
  own: Settings,
): FleetNeededInputs => ({
  trips: fleet.trips,
  out: fleet.out.map((trip) => ({ days_out: daysOut(trip, now) })),
  at_home: fleet.full + fleet.empty,
  fills_a_week: fillsAWeek,
  home_days: homeDays,
  lost_a_year: fleet.lostAYear,
  value_pounds: setting(`${fleet.kind}_value_pounds` as FigureId, own),
});
