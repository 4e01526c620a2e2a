// A network that fails in every way that one has been seen to fail, and counts how often.

import { NoAnswer, type Transport } from "../../../static/src/sync/transport.ts";
import type { Chance } from "./chance.ts";

export const FAULTS = [
  "question lost",
  "answer lost",
  "answer cut short",
  "asked twice",
  "delivered late",
  "busy",
  "portal page",
] as const;
export type Fault = (typeof FAULTS)[number];

export class BadNetwork {
  readonly seen = new Map<Fault | "crash", number>();
  readonly #chance: Chance;
  readonly #percent: number;
  /** Questions that are still on their way. */
  #late: (() => Promise<unknown>)[] = [];

  constructor(chance: Chance, percent: number) {
    this.#chance = chance;
    this.#percent = percent;
  }

  count(fault: Fault | "crash"): void {
    this.seen.set(fault, (this.seen.get(fault) ?? 0) + 1);
  }

  readonly over =
    (ask: Transport): Transport =>
    async (question) => {
      const overdue = this.#late;
      this.#late = [];
      for (const deliver of overdue) await deliver();
      if (!this.#chance.in(this.#percent)) return ask(question);
      const fault = this.#chance.of(FAULTS);
      this.count(fault);
      switch (fault) {
        case "question lost":
          throw new NoAnswer("lost");
        case "answer lost":
          await ask(question);
          throw new NoAnswer("lost");
        case "delivered late":
          this.#late.push(() => ask(question));
          throw new NoAnswer("late");
        case "asked twice":
          await ask(question);
          return ask(question);
        case "answer cut short":
          await ask(question);
          return { status: 200, body: undefined, retryAfterMs: null };
        case "busy":
          return { status: 503, body: { type: "about:blank" }, retryAfterMs: 120_000 };
        case "portal page":
          return {
            status: 200,
            body: { welcome: "Sign in to use this network" },
            retryAfterMs: null,
          };
      }
    };
}
