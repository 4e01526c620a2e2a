// What the phone knows now, as the sentences take it. Reading it in a component follows changes.

import { computed, signal } from "@preact/signals";
import { book } from "../store/book.ts";
import type { Known } from "./words/known.ts";

/** Turns once a minute, so that "3 h" and "ready" on a screen left open stay true. */
const minute = signal(0);
setInterval(() => {
  minute.value += 1;
}, 60_000);

export const known = computed<Known>(() => {
  minute.value;
  return {
    beers: book.beers.value,
    gyles: book.gyles.value,
    places: book.places.value,
    customers: book.customers.value,
    lots: book.lots.value,
    now: book.now(),
  };
});
