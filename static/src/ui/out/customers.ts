// Customers to choose from.

import { daysBetween } from "../../domain/calendar.ts";
import type { Customer } from "../../domain/records.ts";
import type { OwnEntry } from "../../store/own-shown.ts";
import { WEEKDAYS } from "../words/weekdays.ts";

export type Customers = ReadonlyMap<string, Customer>;

export interface CustomerChoice {
  id: string;
  name: string;
  /** What tells it from others: its delivery day. */
  says: string;
}

const A_MONDAY = "2000-01-03";
const WEEK = 7;
/** After every weekday: a customer with no delivery day is served whenever. */
const NO_DAY = WEEK;

/** Days until the next delivery, today counting as none. */
const daysAhead = (weekday: number | undefined, today: string): number =>
  weekday === undefined ? NO_DAY : (weekday + WEEK - (daysBetween(A_MONDAY, today) % WEEK)) % WEEK;

const deliveryWords = (weekday: number | undefined, ahead: number): string => {
  if (weekday === undefined) return "";
  const when = ahead === 0 ? "today" : ahead === 1 ? "tomorrow" : WEEKDAYS[weekday];
  return `Delivery ${when}`;
};

/** Sent to or entered lately on this phone, the last first: it may be they who are loaded for. */
export const latelyMet = (own: readonly OwnEntry[]): string[] => {
  const met = own
    .filter(({ undone }) => !undone)
    .flatMap(({ entry: { kind, subject, facts } }) => {
      if (kind === "sent") return [String(facts["customer"])];
      return kind === "customer" && facts["name"] !== undefined ? [subject] : [];
    });
  return [...new Set(met)];
};

const order = new Intl.Collator("en-GB");

/** Customers in use whose name holds the words: `first` first, then the next to be delivered to. */
export const customersLike = (
  customers: Customers,
  words: string,
  first: readonly string[],
  today: string,
): CustomerChoice[] => {
  const wanted = words.trim().toLowerCase();
  const rank = (id: string) => {
    const at = first.indexOf(id);
    return at === -1 ? first.length : at;
  };
  return [...customers]
    .filter(([, { fields }]) => !fields.retired && (fields.name ?? "") !== "")
    .map(([id, { fields }]) => {
      const ahead = daysAhead(fields.delivery_day, today);
      const says = deliveryWords(fields.delivery_day, ahead);
      return { id, name: fields.name ?? "", says, ahead };
    })
    .filter(({ name }) => name.toLowerCase().includes(wanted))
    .sort((a, b) => rank(a.id) - rank(b.id) || a.ahead - b.ahead || order.compare(a.name, b.name));
};
