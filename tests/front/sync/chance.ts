// Chance that can be repeated: the same seed always gives the same run.

/** Numbers from 0 up to 1 (the mulberry32 recurrence). */
export const chanceFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
};

export class Chance {
  readonly next: () => number;
  constructor(seed: number) {
    this.next = chanceFrom(seed);
  }
  below(limit: number): number {
    return Math.floor(this.next() * limit);
  }
  of<T>(choices: readonly T[]): T {
    return choices[this.below(choices.length)] as T;
  }
  in(percent: number): boolean {
    return this.next() * 100 < percent;
  }
}
