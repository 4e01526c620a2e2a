/** What the rules of readiness are told of one full container. Twin of cellarapp/domain/cellar/cask.py. */
import type { Working } from "../working.ts";
import type { CellarAsked, Shape } from "./asked.ts";
import { daysToCondition } from "./days.ts";
import { askedHistory, HISTORY_FIELDS, type History, type HistoryInputs } from "./temperatures.ts";

export const CASK_FIELDS = [
  "shape",
  "holds_ml",
  "filled_at",
  "conditioning_days",
  "best_before_on",
  "on_sale_days",
  "fined",
  "fined_at",
  "moves",
  "last_moved_at",
  "stillaged_at",
  "vented_at",
  "hard_spile_at",
  "tapped_at",
  "first_drawn_at",
  "tasted_at",
  "fill_temp_c",
  ...HISTORY_FIELDS,
] as const;
const AFTER_FILLING = "Not before it was filled.";
const FINED_WHY = "Whether isinglass was added.";

/** What is known of it; what is left out takes the brewery's usual value, or has not happened. */
export interface CaskInputs extends HistoryInputs {
  filled_at: string;
  shape?: Shape | null;
  holds_ml?: number | null;
  conditioning_days?: number | null;
  best_before_on?: string | null;
  on_sale_days?: number | null;
  fined?: boolean | null;
  fined_at?: string | null;
  moves?: number | null;
  last_moved_at?: string | null;
  stillaged_at?: string | null;
  vented_at?: string | null;
  hard_spile_at?: string | null;
  tapped_at?: string | null;
  first_drawn_at?: string | null;
  tasted_at?: string | null;
  fill_temp_c?: number | null;
}

/** A full container: times are instants, null for what has not happened. */
export interface Cask {
  shape: Shape;
  holdsMl: number | null;
  filledAt: string;
  conditioningDays: number;
  bestBeforeOn: string | null;
  onSaleDays: number | null;
  fined: boolean;
  finedAt: string | null;
  moves: number;
  lastMovedAt: string | null;
  stillagedAt: string | null;
  ventedAt: string | null;
  hardSpileAt: string | null;
  tappedAt: string | null;
  firstDrawnAt: string | null;
  tastedAt: string | null;
  fillTempC: number | null;
  history: History;
}

/** The container that a rule was told of; a step implies the ones before it. */
export function askedCask(work: Working, asked: CellarAsked): Cask {
  const filledAt = asked.instant("filled_at");
  const later = (field: string) => asked.maybeInstant(field, filledAt, AFTER_FILLING);
  const tappedAt = later("tapped_at");
  const hardSpileAt = later("hard_spile_at") ?? tappedAt;
  const ventedAt = later("vented_at") ?? hardSpileAt;
  return {
    shape: asked.has("shape") ? asked.shape() : "cask",
    holdsMl: asked.maybeNumber("holds_ml"),
    filledAt,
    conditioningDays: daysToCondition(work, asked.maybeNumber("conditioning_days")),
    bestBeforeOn: asked.maybeDay("best_before_on"),
    onSaleDays: asked.maybeNumber("on_sale_days"),
    fined: asked.yes("fined", FINED_WHY, true),
    finedAt: later("fined_at"),
    moves: asked.maybeNumber("moves") ?? 0,
    lastMovedAt: later("last_moved_at"),
    stillagedAt: later("stillaged_at") ?? ventedAt,
    ventedAt,
    hardSpileAt,
    tappedAt,
    firstDrawnAt: later("first_drawn_at"),
    tastedAt: later("tasted_at"),
    fillTempC: asked.maybeNumber("fill_temp_c"),
    history: askedHistory(asked),
  };
}
