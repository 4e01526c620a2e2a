/** Life of finings, moves left, vegan or not. Twin of cellarapp/domain/bench/finings_lots.py. */
import { addDays, daysBetween } from "../calendar.ts";
import type { Settings } from "../figures.ts";
import { Asked, dayOf } from "../inputs.ts";
import { halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import type { FiningsProduct } from "./rates.ts";

const LOTS = ["isinglass", "auxiliary"] as const;

/** A lot's days are written 2026-11-25; its temperature is the warmest it was kept at. */
export interface FiningsLifeInputs {
  product: FiningsProduct;
  received_on: string;
  storage_temp_c: number;
  today: string;
}

/** Days that finings last from receipt, by the warmest that they have been kept at. */
export function lifeDays(work: Working, product: FiningsProduct, warmestC: number): number {
  if (product === "auxiliary") return halfUpWhole(work.setting("auxiliary_life_days"));
  if (warmestC < 0) work.caution("finings_frozen");
  return work.figure("isinglass_life").find((step) => warmestC <= step.up_to_c)?.days ?? 0;
}

/** FINE-6: how long a lot of finings still lasts. */
export function finingsLife(inputs: FiningsLifeInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["product", "received_on", "storage_temp_c", "today"]);
  const work = new Working(settings);
  const product = asked.choice("product", LOTS, "Isinglass, or auxiliary finings.");
  const received = dayOf("received_on", asked.inputs["received_on"]);
  const today = dayOf("today", asked.inputs["today"]);
  const days = lifeDays(work, product, asked.number("storage_temp_c"));
  work.step("Life from receipt, by the warmest storage", days, "days", 0);
  const useBy = addDays(received, days);
  const left = daysBetween(today, useBy);
  work.step("Life left = use by - today", left, "days", 0);
  work.caution("product_sheet_first");
  if (left < 0) work.caution("finings_past");
  return work.done({ use_by: useBy, days_left: left, past: left < 0 });
}

/** FINE-7: how often a fined cask may still be moved. */
export function movesAfterFining(
  inputs: { moves: number; resettles_most?: number | null },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["moves", "resettles_most"]);
  const work = new Working(settings);
  const moves = asked.number("moves");
  const most = asked.has("resettles_most")
    ? asked.number("resettles_most")
    : halfUpWhole(work.setting("resettles_most"));
  const left = most - moves;
  work.step("Moves left = resettles of this beer - moves since fining", left, "moves", 0);
  if (left < 0) work.caution("moved_too_often");
  else if (left === 0) work.caution("no_more_moves");
  return work.done({ moves_left: Math.max(0, left), too_many: left < 0 });
}

/** FINE-8: whether beer may be called vegan: nothing of animals in the recipe, no isinglass. */
export function vegan(
  inputs: { recipe_vegan: boolean; isinglass_used: boolean },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["recipe_vegan", "isinglass_used"]);
  const work = new Working(settings);
  const recipe = asked.flag("recipe_vegan", "Whether nothing in the recipe comes from animals.");
  const fined = asked.flag("isinglass_used", "Whether isinglass went in.");
  if (fined) work.caution("isinglass_not_vegan");
  return work.done({ vegan: recipe && !fined });
}
