// Which entries go into one push: the oldest first, as many as the brewery takes at once, and only
// those whose times are off by the same, so that `sent_at` speaks for all of them.

import type { Own } from "../store/own-entries.ts";

export const MOST_ENTRIES = 500;
/** The brewery takes a mebibyte; the rest is for what stands around the entries. */
const MOST_BYTES = 2 ** 20 - 1024;

const encoder = new TextEncoder();

/** The clock's jitter, beneath what the brewery looks at. */
const SAME_MS = 1000;

export interface Batch {
  entries: Own[];
  /** By how much later than they say the entries were made. */
  lateMs: number;
  /** The entries as JSON, in their order. */
  json: string;
}

export const batchOf = (
  unsent: readonly Own[],
  most: number,
  lateMsOf: (own: Own) => number,
): Batch => {
  const entries: Own[] = [];
  let lateMs = 0;
  const parts: string[] = [];
  let bytes = 0;
  for (const own of unsent) {
    const json = JSON.stringify(own.kept.entry);
    bytes += encoder.encode(json).length + 1;
    const late = lateMsOf(own);
    if (entries.length === 0) lateMs = late;
    const sameClock = Math.abs(late - lateMs) <= SAME_MS;
    const tooMuch = entries.length >= most || bytes > MOST_BYTES;
    // One entry always goes, however large: the brewery then says what is wrong with it.
    if (entries.length > 0 && (tooMuch || !sameClock)) break;
    entries.push(own);
    parts.push(json);
  }
  return { entries, lateMs, json: `[${parts.join(",")}]` };
};
