// What the Cellar holds between two taps. The lists are worked out once for each change of the
// book and each minute, however many lines are on screen.

import { computed, signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { allFull, beersIn, cellarLists } from "./lists.ts";

/** The beer that is looked for, null for all. It stays while the app is open. */
export const beer = signal<string | null>(null);

export const fulls = computed(() =>
  allFull(book.containers.value.values(), known.value, ownFigures.value),
);

export const beers = computed(() => beersIn(fulls.value, known.value));

/** A beer that is sold out leaves nothing to show: then all are shown again. */
export const beerShown = computed(() =>
  beers.value.some((one) => one.beer === beer.value) ? beer.value : null,
);

export const lists = computed(() => cellarLists(fulls.value, beerShown.value));

/** The step that asks something before it is recorded, and of which container. */
export interface Asking {
  number: string;
  what: "vent" | "move" | "stillage";
  /** Under which line it is asked: the same cask may stand in a list and among the jobs. */
  under: "line" | "job";
}

export const asking = signal<Asking | null>(null);

/** The container whose reasons are open under its line. */
export const explained = signal<string | null>(null);
