// What Out holds between two taps.

import { computed } from "@preact/signals";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { holdings } from "./holdings.ts";

export const allHoldings = computed(() =>
  holdings(book.containers.value.values(), book.customers.value, known.value.now),
);

/** The customer that is loaded for: chosen once, it stays until another is chosen. */
export const sendTo = book.setting<string>("out.sendTo", "");

/** Which of several places the empties are put in. */
export const backTo = book.setting<string>("out.backTo", "");
