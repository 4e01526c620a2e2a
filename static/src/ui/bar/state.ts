// What the Bar holds between two taps.

import { computed, effect, signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { fulls } from "../cellar/state.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { setHalfMade } from "../shell/half-made.ts";
import type { Unit } from "./dip.ts";
import { barLists } from "./lists.ts";
import { endings } from "./run-out.ts";

export const lists = computed(() =>
  barLists(book.containers.value.values(), known.value, ownFigures.value),
);

/** When each container on sale runs out, by its number, with the next one of its beer. */
export const ending = computed(() =>
  endings(lists.value.onSale, fulls.value, known.value, ownFigures.value),
);

/** The container that is being taken off, while it is asked why. */
export const takingOff = signal<string | null>(null);

/** A dip half typed, and of which container. Null while none is dipped. */
export const dipping = signal<{ number: string; typed: string } | null>(null);

/** What the dipstick, or the head, counts in; it stays as it was last. */
export const dipUnit = book.setting<Unit>("bar.dipUnit", "litres");

effect(() => setHalfMade("dip", (dipping.value?.typed ?? "") !== ""));
