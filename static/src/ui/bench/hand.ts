// What was typed on the bench's pad outlives the tab: a phone may close it in a pocket. It lies in
// the tab's own storage and not among the settings, which other tabs would take over as they stand.

import { effect, type Signal } from "@preact/signals";
import { book } from "../../store/book.ts";
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

/** The newest entry when it was typed: what came before a save was typed for that save. */
const lastSaved = (): string => book.ownEntries.value[0]?.entry.id ?? "";

let kept = false;

/** Take up what was left, unless something is typed already; keep it from then on. */
export const keepHand = (): void => {
  if (kept) return;
  kept = true;
  const left = JSON.parse(localStorage.getItem(KEPT) ?? "{}");
  if (typed.peek() === "" && left.after === lastSaved()) {
    for (const [name, signal] of Object.entries(HAND)) signal.value = left[name];
  }
  effect(() => {
    const now = Object.entries(HAND).map(([name, signal]) => [name, signal.value]);
    const hand = { after: lastSaved(), ...Object.fromEntries(now) };
    localStorage.setItem(KEPT, JSON.stringify(hand));
  });
};
