// Whether an entry is being typed. While one is, the app neither reloads itself nor offers to.

import { computed, signal } from "@preact/signals";

const holders = signal<ReadonlySet<string>>(new Set());

/** True while something typed would be lost by a reload. */
export const halfMade = computed(() => holders.value.size > 0);

const saving = signal(0);

/** True also while something is being written: a reload would cut the phone off in the middle. */
export const mustStay = computed(() => halfMade.value || saving.value > 0);

/** Stay from this moment until the work is done, however it ends. */
export const whileSaving = async <T>(work: () => Promise<T>): Promise<T> => {
  saving.value += 1;
  try {
    return await work();
  } finally {
    saving.value -= 1;
  }
};

/** Say of one place on the screen ("pad", "beer form") whether it holds something typed. */
export const setHalfMade = (holder: string, holds: boolean): void => {
  if (holders.peek().has(holder) === holds) return;
  const next = new Set(holders.peek());
  if (holds) next.add(holder);
  else next.delete(holder);
  holders.value = next;
};
