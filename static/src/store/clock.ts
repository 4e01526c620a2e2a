// The phone's clock, put right by what the brewery's was seen to say.
// A clock never stops a save. It may be wrong, and somebody may set it between a save and the
// sending of it; what cannot be set is the stopwatch of a page, which tells one from the other.

import type { ClockOffset, Kept, Reckoning } from "./kept.ts";

/** Beyond this a jump of the clock is a setting of it, not jitter. The brewery draws the same line. */
export const JITTER_MS = 120_000;

export const asTime = (ms: number): string => new Date(ms).toISOString();

interface Clocks {
  nowMs(): number;
  stopwatchMs(): number;
  /** Names the page that the stopwatch belongs to. */
  page: string;
}

export class Clock {
  readonly #clocks: Clocks;
  #offset: ClockOffset | null = null;
  /** The clock less the stopwatch, when the offset in use began: less of it is a clock set back. */
  #leadAtFirst: number;
  /** The lead at the last answer of the brewery that this page had. */
  #leadWhenHeard: number | null = null;

  constructor(clocks: Clocks) {
    this.#clocks = clocks;
    this.#leadAtFirst = this.#leadNow();
  }

  get offset(): ClockOffset | null {
    return this.#offset;
  }

  /** The brewery has just been heard: from now on by this offset, whether or not it can be kept. */
  hear(offset: ClockOffset): void {
    this.#offset = offset;
    this.#leadAtFirst = this.#leadNow();
    this.#leadWhenHeard = this.#leadAtFirst;
  }

  /** What is kept, by an earlier page or by another tab, where it is newer. */
  follow(kept: ClockOffset): void {
    if (this.#offset !== null && this.#offset.measuredAt >= kept.measuredAt) return;
    this.#offset = kept;
    this.#leadAtFirst = this.#leadNow();
  }

  get offsetMs(): number {
    return (this.#offset?.offsetMs ?? 0) + this.#setBackMs();
  }

  /** Milliseconds since 1970 by the phone's own clock, right or wrong. */
  deviceMs(): number {
    return this.#clocks.nowMs();
  }

  nowMs(): number {
    return this.deviceMs() + this.offsetMs;
  }

  now(): string {
    return asTime(this.nowMs());
  }

  /** The time of a new entry: now, but not before the device's last one. */
  nextAfter(lastAt: string): string {
    const now = this.nowMs();
    const last = lastAt === "" ? 0 : Date.parse(lastAt);
    return last > now && last - now <= JITTER_MS ? lastAt : asTime(now);
  }

  /** What is kept of the clocks with an entry that is made now. */
  reckoning(): Reckoning {
    const { page } = this.#clocks;
    const watch = {
      page,
      ms: this.#clocks.stopwatchMs(),
      heardAt: this.offset?.measuredAt ?? null,
    };
    return { savedAt: this.now(), offsetMs: this.offsetMs, watch };
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
    const held = this.#offset === null ? undefined : this.offsetMs;
    const offsetMs = held === undefined ? middle : Math.min(Math.max(held, low), high);
    return { offsetMs, measuredAt: asTime(Date.parse(brewery)) };
  }

  /** Whether the brewery's time is known: this page has heard it, and the clock ran on since. */
  get sure(): boolean {
    const heard = this.#leadWhenHeard;
    return heard !== null && Math.abs(this.#leadNow() - heard) <= JITTER_MS;
  }

  /** Whether the clock may have been set since an entry was made: then the brewery's time decides. */
  doubts({ savedAt, offsetMs, watch }: Reckoning): boolean {
    if (watch?.page !== this.#clocks.page) return true;
    const lead = Date.parse(savedAt) - offsetMs - watch.ms;
    return Math.abs(this.#leadNow() - lead) > JITTER_MS;
  }

  /**
   * How much later than it says an entry was made. An entry of another phone was made by another
   * clock, of which nothing is known but what it said.
   */
  lateMs(kept: Kept, device: string): number {
    const told = Date.parse(kept.savedAt);
    return this.#madeMs(kept, told, kept.entry.device === device) - told;
  }

  /** The clock was not set since; or it was right then; or the stopwatch says; or it is unknown. */
  #madeMs({ offsetMs, watch }: Kept, toldMs: number, mine: boolean): number {
    const nowMs = this.nowMs();
    const ranMs =
      watch?.page === this.#clocks.page ? this.#clocks.stopwatchMs() - watch.ms : undefined;
    const heardMs = Date.parse(watch?.heardAt ?? "");
    const canBe = (ms: number): boolean =>
      // What was heard of a brewery whose own clock was wrong is no bound.
      !(ms < heardMs - JITTER_MS && heardMs <= nowMs) && ms <= nowMs - (ranMs ?? 0) + JITTER_MS;
    const sameClockMs = toldMs - offsetMs + this.offsetMs;
    // Where both can be, the stopwatch has stood still less under the later one.
    const setSince = ranMs !== undefined && canBe(toldMs) && toldMs - sameClockMs > JITTER_MS;
    if (mine && canBe(sameClockMs) && !setSince) return sameClockMs;
    if (canBe(toldMs)) return toldMs;
    return nowMs - (ranMs ?? 0);
  }

  #leadNow(): number {
    return this.#clocks.nowMs() - this.#clocks.stopwatchMs();
  }

  /** Backwards only somebody sets a clock; forwards it also goes while the stopwatch sleeps. */
  #setBackMs(): number {
    const backMs = this.#leadAtFirst - this.#leadNow();
    return backMs > JITTER_MS ? backMs : 0;
  }
}
