// Whom to call today: every customer with something out, by what a call is worth, apart from those
// who have promised a day or were asked lately.

import { daysBetween, londonDate } from "../../domain/calendar.ts";
import type { Settings } from "../../domain/figures.ts";
import { callWorth } from "../../domain/fleet/call-worth.ts";
import type { Trips } from "../../domain/fleet/survival.ts";
import { endedTrips, type TripCounts } from "../../domain/fleet/trip-counts.ts";
import type { Brewery } from "../../domain/records.ts";
import type { Trip } from "../../domain/standing.ts";
import { depositPence } from "./deposits.ts";
import type { Away, Holding } from "./holdings.ts";

export type Worth = ReturnType<typeof callWorth>;

/** A customer who need not be asked before a day, and why. */
export interface Rest {
  until: string;
  why: "promised" | "asked";
}

export interface Call {
  holding: Holding;
  worth: Worth;
  rest: Rest | null;
}

export interface Calls {
  /** What a call is worth most comes first. */
  today: Call[];
  resting: Call[];
}

const agreedDays = ({ since, due_on }: Trip): number | null =>
  due_on === null ? null : Math.max(0, daysBetween(londonDate(since), due_on));

const openTrip = ({ days, trip }: Away): Trips => {
  const { on_record_since, since } = trip;
  const entered = on_record_since === null ? 0 : daysBetween(londonDate(since), on_record_since);
  return { entered_day: Math.max(0, entered), days, returned: 0, open: 1 };
};

/** Alike trips as one, so that all customers together are no longer to reckon with than one. */
const together = (trips: readonly Trips[]): Trips[] => {
  const alike = new Map<string, Trips>();
  for (const one of trips) {
    const key = `${one.entered_day} ${one.days}`;
    const so = alike.get(key);
    if (so === undefined) alike.set(key, { ...one });
    else {
      so.returned += one.returned;
      so.open += one.open;
    }
  }
  return [...alike.values()];
};

/** Until when nobody needs to ask: a day that is promised, else the day to ask again. */
export const restOf = ({ record }: Holding, today: string): Rest | null => {
  const { promised_on = null, ask_again_on = null } = record?.chase ?? {};
  if (promised_on !== null && promised_on >= today) return { until: promised_on, why: "promised" };
  if (ask_again_on !== null && ask_again_on > today) return { until: ask_again_on, why: "asked" };
  return null;
};

const POUND_PENCE = 100;

/** What a call to one customer is worth. `all` are the trips of everybody, open ones among them. */
export const worthOf = (
  { away, customer, record }: Holding,
  trips: ReadonlyMap<string, TripCounts>,
  all: readonly Trips[],
  own: Settings,
  brewery: Brewery | undefined,
): Worth => {
  const counts = trips.get(customer);
  const ended = counts === undefined ? [] : endedTrips(counts);
  const out = away.map(({ standing, trip, days }) => ({
    kind: standing.kind,
    days_out: days,
    agreed_days: agreedDays(trip),
    deposit_pounds: depositPence(standing.kind, { customer: record, brewery }) / POUND_PENCE,
    hire_pounds_a_day: (standing.hire?.pence_a_day ?? 0) / POUND_PENCE,
  }));
  return callWorth({ own: together([...ended, ...away.map(openTrip)]), all, out }, own);
};

/** The trips of everybody: those that have ended and those that are still open. */
export const allTrips = (
  holdings: readonly Holding[],
  trips: ReadonlyMap<string, TripCounts>,
): Trips[] =>
  together([
    ...[...trips.values()].flatMap((counts) => endedTrips(counts)),
    ...holdings.flatMap(({ away }) => away.map(openTrip)),
  ]);

export const callsToday = (
  holdings: readonly Holding[],
  trips: ReadonlyMap<string, TripCounts>,
  now: string,
  own: Settings,
  brewery?: Brewery,
): Calls => {
  const all = allTrips(holdings, trips);
  const today = londonDate(now);
  const calls = holdings
    .map((holding) => ({
      holding,
      worth: worthOf(holding, trips, all, own, brewery),
      rest: restOf(holding, today),
    }))
    .filter(({ worth }) => worth.result.worth_calling)
    .sort(
      ({ worth: { result: a }, holding: one }, { worth: { result: b }, holding: other }) =>
        b.worth_pence - a.worth_pence ||
        b.longest_days - a.longest_days ||
        (one.customer < other.customer ? -1 : 1),
    );
  return {
    today: calls.filter(({ rest }) => rest === null),
    resting: calls.filter(({ rest }) => rest !== null),
  };
};
