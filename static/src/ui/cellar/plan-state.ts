// The plan on screen, and today's jobs, worked out once for each change and minute.

import { computed, signal } from "@preact/signals";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { jobsFor, nextSaturday, pickedRows, planFor, saleInstant } from "./plan.ts";
import { beerShown, fulls } from "./state.ts";

/** The day that was chosen, null for the next Saturday; it stays while the app is open. */
export const chosenDay = signal<string | null>(null);
export const saleDay = computed(() => chosenDay.value ?? nextSaturday(known.value.now));
export const saleClock = signal("13:00");

export const saleAt = computed(() => saleInstant(saleDay.value, saleClock.value));

const wanted = computed(() => {
  const beer = beerShown.value;
  return beer === null ? fulls.value : fulls.value.filter((full) => full.beer === beer);
});

export const plan = computed(() =>
  planFor(wanted.value, saleAt.value, known.value, ownFigures.value),
);

export const picked = computed(() => pickedRows(wanted.value, known.value, ownFigures.value));

export const jobs = computed(() => jobsFor(fulls.value, known.value, ownFigures.value));
