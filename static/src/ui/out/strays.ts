// Containers of other breweries that came back with ours: whose they are, and their way home.

import { daysBetween, londonDate } from "../../domain/calendar.ts";
import type { Customer } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { count, sentence } from "../words.ts";
import type { Draft } from "./back.ts";

/** A name as it is compared. */
export const folded = (name: string | undefined): string => (name ?? "").trim().toLowerCase();

/** Whether it is with whom it belongs to: then it is nobody's to chase. */
export const isHome = (
  { owner, trip }: Standing,
  customers: ReadonlyMap<string, Customer>,
): boolean =>
  owner !== null &&
  trip !== null &&
  folded(customers.get(trip.customer)?.fields.name) === folded(owner);

export interface Stray {
  standing: Standing;
  owner: string;
  /** Days since it came. */
  days: number;
}

/** Empty, at the brewery, and another's; the longest here first. A hired one in use is full or out. */
export const strays = (containers: Iterable<Standing>, now: string): Stray[] =>
  [...containers]
    .flatMap((standing) => {
      const { contents, held, owner, registered, returned, trip } = standing;
      if (owner === null || trip !== null || contents !== null || held !== null) return [];
      const since = (returned ?? registered)?.since ?? now;
      return [{ standing, owner, days: daysBetween(londonDate(since), londonDate(now)) }];
    })
    .sort((a, b) => b.days - a.days || (a.standing.number < b.standing.number ? -1 : 1));

/** "Of Wold Brewery, here 12 days." */
export const strayWords = ({ owner, days }: Stray): string =>
  sentence(`of ${owner}, ${days === 0 ? "since today" : `here ${count(days, "day")}`}.`);

/** The customer that an owner is on record as, where it is one. */
export const customerLike = (
  owner: string,
  customers: ReadonlyMap<string, Customer>,
): [string, Customer] | undefined =>
  [...customers].find(([, { fields }]) => folded(fields.name) === folded(owner));

/** Sent to its owner, who is entered as a customer where it is none yet. */
export const homeDrafts = (
  { standing, owner }: Stray,
  customers: ReadonlyMap<string, Customer>,
  newId: () => string,
): Draft[] => {
  const known = customerLike(owner, customers);
  const customer = known?.[0] ?? newId();
  const sent: Draft = {
    kind: "sent",
    subject: standing.number,
    facts: { customer, due_on: null },
  };
  return known === undefined
    ? [{ kind: "customer", subject: customer, facts: { name: owner } }, sent]
    : [sent];
};
