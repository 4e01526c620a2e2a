// Customers to choose from.

import type { Customer } from "../../domain/records.ts";
import { WEEKDAYS } from "../office/records/specs.ts";

export type Customers = ReadonlyMap<string, Customer>;

export interface CustomerChoice {
  id: string;
  name: string;
  /** What tells it from others: its delivery day. */
  says: string;
}

const order = new Intl.Collator("en-GB");

/** Customers in use whose name holds the words; those of `first` first, in that order. */
export const customersLike = (
  customers: Customers,
  words: string,
  first: readonly string[],
): CustomerChoice[] => {
  const wanted = words.trim().toLowerCase();
  const rank = (id: string) => {
    const at = first.indexOf(id);
    return at === -1 ? first.length : at;
  };
  return [...customers]
    .filter(([, { fields }]) => !fields.retired && (fields.name ?? "") !== "")
    .map(([id, { fields }]) => ({
      id,
      name: fields.name ?? "",
      says: fields.delivery_day === undefined ? "" : `${WEEKDAYS[fields.delivery_day]} delivery`,
    }))
    .filter(({ name }) => name.toLowerCase().includes(wanted))
    .sort((a, b) => rank(a.id) - rank(b.id) || order.compare(a.name, b.name));
};
