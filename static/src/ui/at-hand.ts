// What must be there before the book is open, or must outlive a tab that a phone closes in a pocket:
// kept at once in the browser's small storage. It is this tab's own: other tabs, which would take a
// setting of the book over as it stands, see it when they are opened.

import { effect, type Signal, signal } from "@preact/signals";
import { troubleFrom } from "../store/trouble.ts";
import { say } from "./parts/say.ts";

/** A signal that this phone keeps under a name; told on the screen when it has no room for it. */
export const atHand = <T>(name: string, initial: T): Signal<T> => {
  const key = `cellarapp.${name}`;
  const left = localStorage.getItem(key);
  const kept = signal<T>(left === null ? initial : JSON.parse(left));
  effect(() => {
    const now = JSON.stringify(kept.value);
    try {
      localStorage.setItem(key, now);
    } catch (fault) {
      say.trouble(troubleFrom(fault).message);
    }
  });
  return kept;
};
