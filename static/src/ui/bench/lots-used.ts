// The lots that this phone notes with doses, as the records and its own choice have it.

import { computed } from "@preact/signals";
import { book } from "../../store/book.ts";
import { type ChosenLots, lotsInUse } from "./lots.ts";

/** By product; kept on the phone. */
export const chosenLots = book.setting<ChosenLots>("bench.lots", {});

export const usedLots = computed(() =>
  lotsInUse(book.lots.value, chosenLots.value, book.containers.value.values()),
);
