// When to go to the brewery next: at once after a save, every half minute while somebody looks,
// and more and more seldom while it does not answer.

const POLL_MS = 30_000;
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 60_000;
/** Nobody in the cellar waits longer for a gateway that says so. */
const LONGEST_LEFT_ALONE_MS = 3_600_000;

export type Occasion =
  /** Something was saved. */
  | "saved"
  /** The phone says that it is online, or the app is looked at again. */
  | "hope"
  /** A person asked for it. */
  | "asked"
  /** The time that was set has come. */
  | "due";

export class Pace {
  /** Answers that failed to come, one after another. */
  failures = 0;
  dueMs = Number.NEGATIVE_INFINITY;
  #leftAloneUntilMs = Number.NEGATIVE_INFINITY;
  readonly #random: () => number;

  /** `random` gives numbers from 0 up to 1. */
  constructor(random: () => number) {
    this.#random = random;
  }

  /** Whether to go now. */
  may(occasion: Occasion, nowMs: number): boolean {
    if (occasion === "asked") {
      this.failures = 0;
      this.#leftAloneUntilMs = Number.NEGATIVE_INFINITY;
      return true;
    }
    if (nowMs < this.#leftAloneUntilMs) return false;
    if (occasion === "hope") this.failures = 0;
    // A save while the brewery is silent does not make it answer any sooner.
    if (occasion === "saved") return this.failures === 0;
    return occasion === "hope" || nowMs >= this.dueMs;
  }

  succeeded(nowMs: number): void {
    this.failures = 0;
    this.dueMs = nowMs + POLL_MS;
  }

  /**
   * Full jitter: anywhere up to a bound that doubles, so that twenty phones do not come back at
   * the same moment. Never before the brewery asked to be left alone.
   */
  failed(nowMs: number, retryAfterMs: number | null): void {
    this.failures += 1;
    const bound = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(this.failures, 10));
    const waitMs = FIRST_WAIT_MS + this.#random() * (bound - FIRST_WAIT_MS);
    const aloneMs = Math.min(retryAfterMs ?? 0, LONGEST_LEFT_ALONE_MS);
    this.#leftAloneUntilMs = retryAfterMs === null ? Number.NEGATIVE_INFINITY : nowMs + aloneMs;
    this.dueMs = Math.max(nowMs + waitMs, this.#leftAloneUntilMs);
  }
}
