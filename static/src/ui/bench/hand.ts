// What was typed on the bench's pad outlives the tab: a phone may close it in a pocket.

import { effect, type Signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { atHand } from "../at-hand.ts";
import { chosen, instead, newCapacity, typed, typingLitres, volumeMl } from "./state.ts";

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

interface Left {
  readonly after?: string;
  readonly [name: string]: unknown;
}
const left = atHand<Left>("bench", {});

let kept = false;

/** Take up what was left, unless something is typed already; keep it from then on. */
export const keepHand = (): void => {
  if (kept) return;
  kept = true;
  const before = left.peek();
  if (typed.peek() === "" && before.after === lastSaved()) {
    for (const [name, signal] of Object.entries(HAND)) {
      if (name in before) signal.value = before[name];
    }
  }
  effect(() => {
    const now = Object.entries(HAND).map(([name, signal]) => [name, signal.value]);
    left.value = { after: lastSaved(), ...Object.fromEntries(now) };
  });
};
