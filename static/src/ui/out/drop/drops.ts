// The stops of the van: which are still to be made, and which were made today.

import { computed } from "@preact/signals";
import { londonDate } from "../../../domain/calendar.ts";
import type { Drop } from "../../../domain/records.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { customerName } from "../../words.ts";

export interface Stop {
  id: string;
  customer: string;
  numbers: readonly string[];
  fields: Drop["fields"];
  set_by: Drop["set_by"];
}

const asStop = ([id, { fields, set_by }]: readonly [string, Drop]): Stop => ({
  id,
  customer: fields.customer ?? "",
  numbers: fields.numbers ?? [],
  fields,
  set_by,
});

const byName = (a: Stop, b: Stop): number =>
  customerName(known.peek(), a.customer) < customerName(known.peek(), b.customer) ? -1 : 1;

const inUse = computed(() =>
  [...book.drops.value].filter(([, { fields }]) => !fields.retired).map(asStop),
);

export const stopById = (id: string): Stop | undefined =>
  inUse.value.find((stop) => stop.id === id);

/** Made up and not handed over yet. */
export const toMake = computed(() =>
  inUse.value.filter(({ fields }) => fields.handed_over_at === undefined).sort(byName),
);

/** Handed over today, the last one first. */
export const madeToday = computed(() => {
  const today = londonDate(known.value.now);
  const at = ({ fields }: Stop): string => fields.handed_over_at ?? "";
  return inUse.value
    .filter((stop) => at(stop) !== "" && londonDate(at(stop)) === today)
    .sort((a, b) => (at(a) < at(b) ? 1 : -1));
});

/** Those that go on the van for others; a container can be made up once. */
export const madeUpElsewhere = (number: string, id: string): Stop | undefined =>
  toMake.value.find((stop) => stop.id !== id && stop.numbers.includes(number));

/** What the customer has of ours now. */
export const heldBy = (customer: string): string[] =>
  [...book.containers.value.values()]
    .filter(({ trip, held }) => trip?.customer === customer && held?.state !== "scrapped")
    .map(({ number }) => number);
