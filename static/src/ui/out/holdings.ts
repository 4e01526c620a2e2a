// Who has our containers: one holding for each customer with any out.

import { londonDate } from "../../domain/calendar.ts";
import type { Customer } from "../../domain/records.ts";
import type { Standing, Trip } from "../../domain/standing.ts";
import { daysOut, daysOverdue } from "../../domain/trips.ts";

import { isHome } from "./strays.ts";

/** A container that is out. */
export interface Away {
  standing: Standing;
  trip: Trip;
  days: number;
  overdue: number;
}

export interface Holding {
  customer: string;
  record: Customer | undefined;
  /** Overdue first, then by days out. */
  away: Away[];
  overdue: number;
  longest: number;
}

export const asAway = (standing: Standing, now: string): Away | null => {
  const { trip } = standing;
  if (trip === null) return null;
  return { standing, trip, days: daysOut(trip, now), overdue: daysOverdue(trip, now) };
};

const byUrgency = (a: Away, b: Away): number =>
  b.overdue - a.overdue || b.days - a.days || (a.standing.number < b.standing.number ? -1 : 1);

const asHolding = (customer: string, record: Customer | undefined, away: Away[]): Holding => ({
  customer,
  record,
  away: away.sort(byUrgency),
  overdue: away.filter((one) => one.overdue > 0).length,
  longest: Math.max(...away.map((one) => one.days)),
});

/** All holdings: those with anything overdue first, then by the longest days out. */
export const holdings = (
  containers: Iterable<Standing>,
  customers: ReadonlyMap<string, Customer>,
  now: string,
): Holding[] => {
  const byCustomer = new Map<string, Away[]>();
  for (const standing of containers) {
    const away = asAway(standing, now);
    if (away === null || isHome(standing, customers)) continue;
    const others = byCustomer.get(away.trip.customer);
    if (others) others.push(away);
    else byCustomer.set(away.trip.customer, [away]);
  }
  return [...byCustomer]
    .map(([customer, away]) => asHolding(customer, customers.get(customer), away))
    .sort(
      (a, b) =>
        Number(b.overdue > 0) - Number(a.overdue > 0) ||
        b.longest - a.longest ||
        b.away.length - a.away.length ||
        (a.customer < b.customer ? -1 : 1),
    );
};

/** Those of which the customer says that they are empty. */
export const saidEmpty = ({ away }: Holding): Away[] =>
  away.filter(({ trip }) => trip.told?.says === "empty");

/** Whether something that is overdue was out already when they were last asked. */
export const askedAbout = ({ record, away }: Holding): boolean => {
  const asked = record?.chase?.since ?? "";
  return away.some(({ trip, overdue }) => overdue > 0 && trip.since <= asked);
};

/** A promise is broken once its day has gone by and something it was about is still overdue. */
export const brokenPromise = (holding: Holding, now: string): string | null => {
  const promised = holding.record?.chase?.promised_on ?? null;
  if (promised === null || promised >= londonDate(now) || !askedAbout(holding)) return null;
  return promised;
};
