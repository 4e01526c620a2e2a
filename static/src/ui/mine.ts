// Who has this phone in hand, and what they may do with it.

import { computed } from "@preact/signals";
import type { Kind, MadeEntry } from "../domain/entries.ts";
import { roleOf } from "../store/account.ts";
import { book } from "../store/book.ts";

export const person = book.setting<string>("person", "");

/** Null where the phone does not know: then nothing is kept from anybody here. */
export const role = computed(() => roleOf(book.account.value, person.value));

/** Whether who has this phone in hand may record this. */
export const may = (kind: Kind): boolean => book.whyNot(kind) === null;

/** Whether they may undo this entry, or say that its number was wrong. */
export const mayPutRight = (entry: MadeEntry): boolean => book.whyNot("voided", entry) === null;
