// What was typed on the bench's pad outlives the tab: a phone may close it in a pocket. It lies in
// the tab's own storage and not among the settings, which other tabs would take over as they stand.

import { effect, type Signal } from "@preact/signals";
import { chosen, instead, newCapacity, typed, typingLitres, volumeMl } from "./state.ts";

const KEPT = "cellarapp.bench";
const HAND: { readonly [name: string]: Signal<unknown> } = {
  typed,
  chosen,
  typingLitres,
  volumeMl,
  newCapacity,
  instead,
};

let kept = false;

/** Take up what was left, unless something is typed already; keep it from then on. */
export const keepHand = (): void => {
  if (kept) return;
  kept = true;
  const left: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "{}");
  if (typed.peek() === "" && typeof left === "object" && left !== null) {
    for (const [name, value] of Object.entries(left)) {
      const signal = HAND[name];
      if (signal !== undefined) signal.value = value;
    }
  }
  effect(() => {
    const now = Object.entries(HAND).map(([name, signal]) => [name, signal.value]);
    localStorage.setItem(KEPT, JSON.stringify(Object.fromEntries(now)));
  });
};
