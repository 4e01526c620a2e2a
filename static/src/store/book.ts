// The phone's book in a browser: the one that the screens use.

import { effect } from "@preact/signals";
import { Book } from "./create-book.ts";
import { lossSince, markOf, numberOn } from "./lost-storage.ts";
import { openCellar, PATIENCE_MS } from "./open.ts";
import { Phone } from "./phone.ts";
import { tabsOverChannel } from "./tabs.ts";

export type { Waiting } from "./create-book.ts";
export type { Imported } from "./outbox-file.ts";
export type { OwnEntry } from "./own-shown.ts";
export type { Draft, Saved } from "./saving.ts";

const MARK = "cellarapp.mark";

/** For the sync engine; screens go through the book. */
export const phone = new Phone({
  open: (watching) => openCellar(watching, PATIENCE_MS),
  nowMs: () => Date.now(),
  stopwatchMs: () => performance.now(),
  random: (bytes) => crypto.getRandomValues(bytes),
  tabs: tabsOverChannel("cellarapp"),
});

export const book = new Book(phone);

// At once, while the page is still being made: the storage takes its time.
book.open().catch(() => undefined); // whoever opens it to use it is told

/** Once at the start: what must not be lost asks the browser to keep it, and leaves a mark. */
export const keepSafe = async (): Promise<void> => {
  await book.open();
  const mark = localStorage.getItem(MARK);
  phone.loss.value = lossSince(mark, phone.device);
  numberOn(phone, mark);
  effect(() => {
    const seq = Math.max(phone.numberedTo, phone.running.seq);
    const left = markOf(phone.device, book.waiting.value.count, seq);
    // Whoever waits for the save hears first.
    setTimeout(() => localStorage.setItem(MARK, left));
  });
  const lasting = book.setting<boolean | null>("storage_lasting", null);
  let asked = false;
  book.onSaved(() => {
    if (asked || lasting.peek() === true) return;
    asked = true; // after the first save: browsers say yes rather to a page that is being used
    void navigator.storage?.persist?.().then((granted) => {
      lasting.value = granted;
    });
  });
};
