// What Out holds between two taps.

import { computed } from "@preact/signals";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { allTrips, callsToday, type Worth, worthOf } from "./calls.ts";
import { holdings } from "./holdings.ts";

export const allHoldings = computed(() =>
  holdings(book.containers.value.values(), book.customers.value, known.value.now),
);

export const calls = computed(() =>
  callsToday(
    allHoldings.value,
    book.trips.value,
    known.value.now,
    ownFigures.value,
    book.breweries.value.get("brewery"),
  ),
);

const everyTrip = computed(() => allTrips(allHoldings.value, book.trips.value));

/** What a call to a customer is worth; null where it has nothing of ours. */
export const worthAt = (customer: string): Worth | null => {
  const holding = allHoldings.value.find((one) => one.customer === customer);
  return holding === undefined
    ? null
    : worthOf(
        holding,
        book.trips.value,
        everyTrip.value,
        ownFigures.value,
        book.breweries.value.get("brewery"),
      );
};

/** The customer that is loaded for: chosen once, it stays until another is chosen. */
export const sendTo = book.setting<string>("out.sendTo", "");

/** Which of several places the empties are put in. */
export const backTo = book.setting<string>("out.backTo", "");
