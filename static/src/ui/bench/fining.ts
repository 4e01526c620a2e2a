// Whether isinglass may go into a full container now: order and interval by the rule.

import { type Added, finingsOrder } from "../../domain/bench/finings-order.ts";
import type { Dose } from "../../domain/standing.ts";

const MINUTE_MS = 60_000;
/** What went in longer ago matters to no interval. */
const LONG_AGO_MIN = 100_000;

export type NotFined = { is: "vegan" } | { is: "wait"; until: string };

type WentIn = Pick<Dose, "what" | "since">;

const earlier = (doses: readonly WentIn[], now: string): Added[] =>
  doses.flatMap(({ what, since }) => {
    if (what === "primings" || what === "hops") return [];
    const minutes = (Date.parse(now) - Date.parse(since)) / MINUTE_MS;
    return [{ product: what, minutes_ago: Math.min(LONG_AGO_MIN, Math.max(0, minutes)) }];
  });

/** Isinglass into beer that has had these doses, by the rule. */
export const finingNow = (doses: readonly WentIn[], vegan: boolean, now: string) =>
  finingsOrder({ product: "isinglass", vegan, earlier: earlier(doses, now).slice(-50) });

/** Null where it may go in. */
export const whyNotFined = (
  doses: readonly WentIn[],
  vegan: boolean,
  now: string,
): NotFined | null => {
  const { because, wait_min } = finingNow(doses, vegan, now).result;
  if (because.includes("vegan_beer")) return { is: "vegan" };
  if (!because.includes("too_soon_after_alginate")) return null;
  // A part of a minute is waited for in full, so that the time said is never too early.
  return {
    is: "wait",
    until: new Date(Date.parse(now) + (wait_min + 1) * MINUTE_MS).toISOString(),
  };
};
