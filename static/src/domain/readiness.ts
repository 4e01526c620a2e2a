/** READY: the stage of a full container, and the dates that hang on it. Twin of cellarapp/domain/readiness.py. */
import { addDays, londonDate } from "./calendar.ts";
import type { Shape } from "./cellar/asked.ts";
import { afterDays, daysOnSale, daysToCondition, windowDays } from "./cellar/days.ts";
import type { Settings } from "./figures.ts";
import type { RecordOf } from "./records.ts";
import type { Standing } from "./standing.ts";
import { Working } from "./working.ts";

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

type Own = "conditioning_days" | "best_before_days" | "on_sale_days" | "abv_tenths";
type WithDays = RecordOf<Partial<Record<Own, number>>>;

/** What a beer says of itself; null where it says nothing. */
const ownDays = (beer: WithDays | null, name: Own): number | null => beer?.fields[name] ?? null;

/** READY-1: best before, counted in days on London's calendar from racking (SHELF-1). */
export function bestBeforeOn(
  rackedAt: string,
  beer: WithDays | null,
  shape: Shape | null = null,
  settings: Settings | null = null,
): string {
  const [own, strength] = [ownDays(beer, "best_before_days"), ownDays(beer, "abv_tenths")];
  return addDays(londonDate(rackedAt), windowDays(new Working(settings), shape, strength, own));
}

/** READY-2: conditioning, then ready, then as far as it has come on the stillage; or past. */
export function stageOf(
  { contents, serving }: Standing,
  readyAt: string,
  offAt: string | null,
  now: string,
): Stage {
  if (!contents) return "empty";
  const bestBefore = contents.best_before;
  if (bestBefore !== null && londonDate(now) > bestBefore) return "past";
  if (offAt !== null && offAt < now) return "past";
  if (!serving) return now >= readyAt ? "ready" : "conditioning";
  if (serving.tapped) return "on_sale";
  return serving.vented ? "working" : "stillaged";
}

/** READY-3: conditioned after the beer's days (COND-1), off so many days after tapping (SALE-1). */
export function readiness(
  standing: Standing,
  beer: WithDays | null,
  now: string,
  settings: Settings | null = null,
): Readiness {
  const { contents, serving } = standing;
  if (!contents) return { stage: "empty", ready_at: null, best_before: null, off_at: null };
  const work = new Working(settings);
  const days = daysToCondition(work, ownDays(beer, "conditioning_days"));
  const readyAt = afterDays(contents.since, days);
  let offAt: string | null = null;
  if (serving?.tapped) {
    const shape = standing.shape === "keg" ? "keg" : "cask";
    const onSale = daysOnSale(work, shape, ownDays(beer, "on_sale_days"));
    offAt = afterDays(serving.tapped.since, onSale);
  }
  return {
    stage: stageOf(standing, readyAt, offAt, now),
    ready_at: readyAt,
    best_before: contents.best_before,
    off_at: offAt,
  };
}
