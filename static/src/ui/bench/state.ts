// What the bench holds between two taps. Kept outside the components, so that a look at another
// screen and back loses nothing that was typed.

import { computed, effect, signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { said, say } from "../parts/say.ts";
import { readTyped, type Typed } from "../parts/typed-number.ts";
import { setHalfMade } from "../shell/half-made.ts";
import type { Instead } from "./instead.ts";

export type JobName = "fill" | "fine" | "wash" | "inspect";

/** Chosen once, kept on the phone until another is chosen. */
export const gyleId = book.setting<string>("bench.gyle", "");
export const job = book.setting<JobName>("bench.job", "fill");
/** What is washed with: a solution on record, "" for none. */
export const solutionId = book.setting<string>("bench.solution", "");
/** Where filled containers stand: a place's id, "" while none was chosen. */
export const standsIn = book.setting<string>("bench.place", "");
/** The kind that was last chosen for a number not on record: mostly the next one is the same. */
export const newKind = book.setting<string>("bench.newKind", "firkin");

export const typed = signal("");
/** The head that was tapped where the digits fit several containers. */
export const chosen = signal<string | null>(null);
/** Litres as typed, while the pad types litres; null while it types numbers. */
export const typingLitres = signal<string | null>(null);
/** Another volume than the nominal one, for the next fill only. */
export const volumeMl = signal<number | null>(null);
/** Other amounts than those worked out, or none, for the next fill only. */
export const instead = signal<Instead>({});
/** Another capacity than the nominal one of `newKind`, in litres as typed. */
export const newCapacity = signal<string | null>(null);
/** The entries whose number was wrong, while the right one is typed. */
export const moving = signal<{ number: string; entries: readonly string[] } | null>(null);
/** An inspection found something: waiting for the reason. */
export const failing = signal(false);

/** What the pad means now. */
export const meant = computed<Typed>(() =>
  book.whole.value || typed.value === ""
    ? readTyped(typed.value, book.containers.value, chosen.value)
    : { is: "unfinished", says: "One moment: this phone is still reading its containers." },
);

export const type = (text: string): void => {
  typed.value = text;
  chosen.value = null;
  failing.value = false;
  if (said.peek()?.trouble) say.nothing();
};

/** Ready for the next container. */
export const clearPad = (): void => {
  type("");
  typingLitres.value = null;
  volumeMl.value = null;
  instead.value = {};
  newCapacity.value = null;
  moving.value = null;
};

effect(() => setHalfMade("bench", typed.value !== "" || moving.value !== null));
