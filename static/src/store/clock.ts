// The phone's clock, put right by what the brewery's was seen to say.
// A clock never stops a save: a wrong one is corrected or flagged later, by the brewery.

import type { ClockOffset } from "./kept.ts";

/** Beyond this a step back of the clock is a correction, not jitter, and is followed. */
const JITTER_MS = 120_000;

export const asTime = (ms: number): string => new Date(ms).toISOString();

export class Clock {
  offset: ClockOffset | null = null;
  readonly #deviceMs: () => number;

  constructor(deviceMs: () => number) {
    this.#deviceMs = deviceMs;
  }

  get offsetMs(): number {
    return this.offset?.offsetMs ?? 0;
  }

  /** Milliseconds since 1970 by the phone's own clock, right or wrong. */
  deviceMs(): number {
    return this.#deviceMs();
  }

  now(): string {
    return asTime(this.#deviceMs() + this.offsetMs);
  }

  /** The time of a new entry: now, but not before the device's last one. */
  nextAfter(lastAt: string): string {
    const now = this.#deviceMs() + this.offsetMs;
    const last = lastAt === "" ? 0 : Date.parse(lastAt);
    return last > now && last - now <= JITTER_MS ? lastAt : asTime(now);
  }

  /**
   * What an answer tells about the clock: the brewery's time lies between sending and receipt, so
   * the true offset lies in a span. The offset held is moved only as far as into that span, so
   * that slow answers do not make it jump about.
   */
  measured(brewery: string, sentMs: number, receivedMs: number): ClockOffset {
    const low = Date.parse(brewery) - receivedMs;
    const high = Date.parse(brewery) - sentMs;
    const middle = Math.round((low + high) / 2);
    const held = this.offset?.offsetMs;
    const offsetMs = held === undefined ? middle : Math.min(Math.max(held, low), high);
    return { offsetMs, measuredAt: asTime(receivedMs + offsetMs) };
  }
}
