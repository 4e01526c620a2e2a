// Which entries go into one push: the oldest first, as many as the brewery takes at once, and only
// those whose times carry the same clock correction, so that `sent_at` speaks for all of them.

import type { Own } from "../store/own-entries.ts";

export const MOST_ENTRIES = 500;
/** The brewery takes a mebibyte; the rest is for what stands around the entries. */
const MOST_BYTES = 2 ** 20 - 1024;

const encoder = new TextEncoder();

export interface Batch {
  entries: Own[];
  /** The entries as JSON, in their order. */
  json: string;
}

export const batchOf = (unsent: readonly Own[], most: number): Batch => {
  const entries: Own[] = [];
  const parts: string[] = [];
  let bytes = 0;
  for (const own of unsent) {
    const json = JSON.stringify(own.kept.entry);
    bytes += encoder.encode(json).length + 1;
    const sameClock = own.kept.offsetMs === (entries[0] ?? own).kept.offsetMs;
    const tooMuch = entries.length >= most || bytes > MOST_BYTES;
    // One entry always goes, however large: the brewery then says what is wrong with it.
    if (entries.length > 0 && (tooMuch || !sameClock)) break;
    entries.push(own);
    parts.push(json);
  }
  return { entries, json: `[${parts.join(",")}]` };
};
