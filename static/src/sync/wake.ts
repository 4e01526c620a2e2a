// What wakes the engine: a save, the time that it set itself, and signs that there may be a
// network again. Browsers are not believed when they say that there is one.

import type { Book } from "../store/create-book.ts";
import type { Sync } from "./create-sync.ts";

/** One alarm at a time. */
export interface Timer {
  set(ring: () => void, waitMs: number): void;
}

export const wake = (engine: Sync, book: Book, timer: Timer, nowMs: () => number): void => {
  const isSeen = (): boolean => document.visibilityState === "visible";
  const setTimer = (): void => {
    timer.set(
      () => {
        // Out of sight there is no hurry to hear news, but what is unsent still wants to go.
        if (isSeen() || book.waiting.peek().count > 0) void go("due");
      },
      Math.max(0, engine.pace.dueMs - nowMs()),
    );
  };
  const go = async (occasion: Parameters<Sync["go"]>[0]): Promise<void> => {
    await engine.go(occasion);
    setTimer();
  };
  book.onSaved(() => void go("saved"));
  addEventListener("online", () => void go("hope"));
  const lookedAt = (): void => {
    // A tab that slept may have missed what the others told; with no network this is all it gets.
    book.catchUp().catch(() => undefined); // told by the book's own trouble
    void go("hope");
  };
  addEventListener("pageshow", lookedAt);
  document.addEventListener("visibilitychange", () => {
    if (isSeen()) lookedAt();
  });
  void go("hope");
};
