// What stands on the pad of one of Out's two jobs. Kept outside the components, so that a look at
// another screen and back loses nothing that was typed.

import { computed, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { readTyped, type Typed } from "../parts/typed-number.ts";
import { setHalfMade } from "../shell/half-made.ts";

export interface PadState {
  typed: Signal<string>;
  /** The head that was tapped where the digits fit several containers. */
  chosen: Signal<string | null>;
  meant: ReadonlySignal<Typed>;
  /** Litres as typed, while the pad types litres; null while it types numbers. */
  litres: Signal<string | null>;
  type: (text: string) => void;
  clear: () => void;
}

export const padState = (holder: string): PadState => {
  const typed = signal("");
  const chosen = signal<string | null>(null);
  const litres = signal<string | null>(null);
  const type = (text: string) => {
    typed.value = text;
    chosen.value = null;
  };
  effect(() => setHalfMade(holder, typed.value !== ""));
  return {
    typed,
    chosen,
    litres,
    meant: computed(() => readTyped(typed.value, book.containers.value, chosen.value)),
    type,
    clear: () => {
      type("");
      litres.value = null;
    },
  };
};
