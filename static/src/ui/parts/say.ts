// What the app has just said: that an entry is saved and where it is, or what went wrong.
// One thing at a time; the next replaces it.

import { signal } from "@preact/signals";
import type { MadeEntry } from "../../domain/entries.ts";
import { book, type Saved } from "../../store/book.ts";
import { whileSaving } from "../shell/half-made.ts";

export interface Said {
  /** "117 filled." Where the entries are is added when it is shown, since that changes. */
  text: string;
  /** The entries that were saved, for "where" and Undo. Empty for a plain message. */
  entries: readonly string[];
  trouble: boolean;
  /** When it was said, on the page's own clock: a message outlives going to the next screen. */
  at: number;
}

export const said = signal<Said | null>(null);

export const say = {
  saved: (text: string, entries: readonly string[]): void => {
    said.value = { text, entries, trouble: false, at: performance.now() };
  },
  trouble: (text: string): void => {
    said.value = { text, entries: [], trouble: true, at: performance.now() };
  },
  nothing: (): void => {
    said.value = null;
  },
  /** On another screen: what was said on leaving the last one stays, older words go. */
  moveOn: (): void => {
    const last = said.peek();
    if (last !== null && performance.now() - last.at > 2000) said.value = null;
  },
};

/** The words of a fault. What the store throws is written for people already. */
export const faultWords = (fault: unknown): string =>
  fault instanceof Error && fault.message !== ""
    ? fault.message
    : "That did not work, and nothing was saved.";

/**
 * Save, then say so, in that order: "saved" is only said once the phone has really kept it.
 * Answers whether it was saved; a fault has been said by then.
 */
export const save = async (
  text: string,
  work: () => Promise<Saved | readonly Saved[]>,
): Promise<boolean> => {
  try {
    const done = await whileSaving(work);
    const all: readonly Saved[] = Array.isArray(done) ? done : [done as Saved];
    say.saved(
      text,
      all.map((saved) => saved.entry.id),
    );
    return true;
  } catch (fault) {
    say.trouble(faultWords(fault));
    return false;
  }
};

/** Undo entries, the last made first, and say what was undone. */
export const undo = async (
  text: string,
  entries: readonly string[],
  /** An entry of another phone, as the brewery told it. */
  told?: MadeEntry,
): Promise<boolean> =>
  save(`Undone: ${text}`, async () => {
    const undone: Saved[] = [];
    for (const id of [...entries].reverse()) undone.push(await book.undo(id, told));
    return undone;
  });
