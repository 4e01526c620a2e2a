/** READY: when a full container can go on sale, how long it stays good. Twin of cellarapp/domain/readiness.py. */
import { addDays, londonDate, sameTimeAfter } from "./calendar.ts";
import { figure } from "./figures.ts";
import type { RecordOf } from "./records.ts";
import type { Standing } from "./standing.ts";

export type Stage =
  | "empty"
  | "conditioning"
  | "ready"
  | "stillaged"
  | "working"
  | "on_sale"
  | "past";

/** Instants, and best_before a day; off_at once it is on sale only. */
export interface Readiness {
  stage: Stage;
  ready_at: string | null;
  best_before: string | null;
  off_at: string | null;
}

type Days = "conditioning_days" | "best_before_days" | "on_sale_days";
type WithDays = RecordOf<Partial<Record<Days, number>>>;

/** A beer's own number of days, or the figure of the trade where it says none. */
export function beerDays(beer: WithDays | null, name: Days): number {
  return beer?.fields[name] ?? figure(name);
}

/** READY-1: best before, counted in days on London's calendar from racking. */
export function bestBeforeOn(rackedAt: string, beer: WithDays | null): string {
  return addDays(londonDate(rackedAt), beerDays(beer, "best_before_days"));
}

/** READY-2, READY-3: conditioning, then ready, until best before or taken off. */
export function readiness(standing: Standing, beer: WithDays | null, now: string): Readiness {
  const { contents, serving } = standing;
  if (!contents) return { stage: "empty", ready_at: null, best_before: null, off_at: null };
  const readyAt = sameTimeAfter(contents.since, beerDays(beer, "conditioning_days"));
  const bestBefore = contents.best_before;
  let offAt: string | null = null;
  let stage: Stage = now >= readyAt ? "ready" : "conditioning";
  if (serving) {
    stage = serving.vented ? "working" : "stillaged";
    if (serving.tapped) {
      stage = "on_sale";
      offAt = sameTimeAfter(serving.tapped.since, beerDays(beer, "on_sale_days"));
    }
  }
  const pastBest = bestBefore !== null && londonDate(now) > bestBefore;
  if (pastBest || (offAt !== null && offAt < now)) stage = "past";
  return { stage, ready_at: readyAt, best_before: bestBefore, off_at: offAt };
}
