// The phone's book in a browser: the one that the screens use.

import { Book } from "./create-book.ts";
import { openCellar } from "./open.ts";
import { Phone } from "./phone.ts";
import { tabsOverChannel } from "./tabs.ts";

export type { Waiting } from "./create-book.ts";
export type { Imported } from "./outbox-file.ts";
export type { OwnEntry } from "./own-shown.ts";
export type { Draft, Saved } from "./saving.ts";

/** For the sync engine; screens go through the book. */
export const phone = new Phone({
  open: openCellar,
  nowMs: () => Date.now(),
  random: (bytes) => crypto.getRandomValues(bytes),
  tabs: tabsOverChannel("cellarapp"),
});

export const book = new Book(phone);
