// What was typed about a weighed container, and what the rule makes of it.

import { fillByWeight } from "../../domain/bench/weight.ts";
import { DomainError } from "../../domain/errors.ts";
import type { Settings } from "../../domain/figures.ts";
import { litres } from "../words.ts";

export interface Weighed {
  grossKg: string;
  tareKg: string;
  gravity: string;
  tempC: string;
}

const LABELS: { [field: string]: string } = {
  gross_g: "Weight with beer",
  tare_g: "Weight empty",
  present_gravity: "Gravity",
  beer_temp_c: "Temperature",
};

const decimal = (text: string): number => {
  const clean = text.trim().replace(",", ".");
  return /^\d{1,4}(\.\d{0,4})?$/.test(clean) ? Number(clean) : Number.NaN;
};

const perUnit = (field: unknown): number => (field === "gross_g" || field === "tare_g" ? 1000 : 1);

/** The litres, or what is missing or cannot be, in words. */
export const readWeighed = (typed: Weighed, capacityMl: number, own: Settings) => {
  const inputs = {
    gross_g: decimal(typed.grossKg) * 1000,
    tare_g: decimal(typed.tareKg) * 1000,
    present_gravity: decimal(typed.gravity),
    beer_temp_c: decimal(typed.tempC),
    capacity_ml: capacityMl,
    method: "weighed" as const,
  };
  try {
    return { worked: fillByWeight(inputs, own), fault: null };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    const { field, low, high } = fault.facts;
    const per = perUnit(field);
    const range = `from ${Number(low) / per} to ${Number(high) / per}`;
    return { worked: null, fault: `${LABELS[String(field)] ?? "A figure"}: ${range}.` };
  }
};

type Result = NonNullable<ReturnType<typeof readWeighed>["worked"]>["result"];

/** "0.3 L over its size, which the excise allows." */
export const toleranceWords = (result: Result): string => {
  const { over_ml, excise, packer } = result;
  if (packer === "under") return "Less than a sealed container of this size may hold.";
  if (over_ml <= 0) return over_ml === 0 ? "Just its size." : `${litres(-over_ml)} under its size.`;
  const over = `${litres(over_ml)} over its size`;
  if (excise === "no_rule") return `${over}.`;
  return excise === "over"
    ? `${over}: more than the excise allows, so duty is due on all of it.`
    : `${over}, within what the excise allows.`;
};
