// The engine in a browser: what wakes it, and how tabs take turns.

import { book, keepSafe, phone } from "../store/book.ts";
import { Sync } from "./create-sync.ts";
import { overFetch, PATIENCE_MS } from "./transport.ts";
import { type Timer, wake } from "./wake.ts";

export type { SyncState } from "./create-sync.ts";

/** Not the clock: set forward by a year it would ask at once for ever, and set back not for a year. */
const stopwatchMs = (): number => performance.now();

const engine = new Sync(phone, {
  ready: () => book.open(),
  transport: overFetch("", PATIENCE_MS),
  // Without locks two tabs may send the same entry twice, which the brewery knows by its id.
  alone: (work) =>
    "locks" in navigator
      ? (navigator.locks.request("sync", work) as ReturnType<typeof work>)
      : work(),
  nowMs: stopwatchMs,
  random: Math.random,
  app: __BUILD_ID__,
});

let alarm: ReturnType<typeof setTimeout> | undefined;
const timer: Timer = {
  set: (ring, waitMs) => {
    clearTimeout(alarm);
    alarm = setTimeout(ring, waitMs);
  },
};

export const sync = {
  state: engine.state,
  /** Something to be told once; set to null when it has been read. */
  notice: engine.notice,
  /** Begin. The book is opened first, if it is not yet. */
  start: (): void => {
    wake(engine, book, timer, stopwatchMs);
    keepSafe().catch(() => undefined); // the book has said what is wrong with the storage
  },
  /** A person wants it now. Resolves when the phone has done what it can. */
  now: (): Promise<void> => engine.go("asked"),
};
