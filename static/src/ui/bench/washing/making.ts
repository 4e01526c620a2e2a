// Making a solution up: what was typed, and what the product's sheet and the rule make of it.

import { causticDilution, peraceticDilution } from "../../../domain/bench/washing.ts";
import { DomainError } from "../../../domain/errors.ts";
import type { Settings } from "../../../domain/figures.ts";
import { halfUpWhole } from "../../../domain/rounding.ts";

export type Agent = "peracetic" | "caustic";

export interface Typed {
  agent: Agent;
  strengthPct: string;
  density: string;
  contactMin: string;
  rinse: string;
  target: string;
  ofWhat: string;
  litres: string;
  tempC: string;
  metal: string;
}

export const START: Typed = {
  agent: "peracetic",
  strengthPct: "",
  density: "",
  contactMin: "",
  rinse: "",
  target: "",
  ofWhat: "",
  litres: "",
  tempC: "",
  metal: "stainless",
};

const LABELS: { [field: string]: string } = {
  strength_pct_w_w: "Strength of the product",
  density_g_per_ml: "Density of the product",
  contact_min: "Contact",
  rinse: "Rinse: say yes or no",
  target_mg_per_l: "Strength wanted",
  target_pct: "Strength wanted",
  of_what: "Say what the % is of",
  solution_ml: "Litres to make up",
  solution_temp_c: "Temperature",
  product: "The product is too weak for that",
};

export const decimal = (text: string): number => {
  const clean = text.trim().replace(",", ".");
  return /^\d{1,6}(\.\d{0,4})?$/.test(clean) ? Number(clean) : Number.NaN;
};

/** A limit on uses or hours: null where none is set. */
export const limitOf = (text: string): number | null | "odd" => {
  if (text.trim() === "") return null;
  const limit = decimal(text);
  return Number.isInteger(limit) && limit >= 1 && limit <= 10_000 ? limit : "odd";
};

const sheetOf = (typed: Typed) => ({
  strength_pct_w_w: decimal(typed.strengthPct),
  density_g_per_ml: decimal(typed.density),
  contact_min: decimal(typed.contactMin),
  // Neither yes nor no is no answer, and the rule refuses it.
  rinse: (typed.rinse === "" ? null : typed.rinse === "yes") as boolean,
  solution_ml: decimal(typed.litres) * 1000,
});

const dilute = (typed: Typed, own: Settings) => {
  if (typed.agent === "peracetic") {
    const target_mg_per_l = decimal(typed.target);
    const solution_temp_c = decimal(typed.tempC);
    const worked = peraceticDilution({ ...sheetOf(typed), target_mg_per_l, solution_temp_c }, own);
    return { worked, madeMgPerL: halfUpWhole(target_mg_per_l) };
  }
  const asked = {
    ...sheetOf(typed),
    target_pct: decimal(typed.target),
    of_what: typed.ofWhat as "product_v_v" | "naoh_w_v",
    metal: typed.metal as "stainless" | "aluminium" | "plastic" | "wood",
  };
  const worked = causticDilution(asked, own);
  const allowed = worked.result.allowed;
  return { worked, madeMgPerL: allowed ? halfUpWhole(worked.result.naoh_g_per_l * 1000) : null };
};

const faultWords = ({ facts }: DomainError): string => {
  const { field, low, high, unit } = facts;
  const name = LABELS[String(field)] ?? "A figure";
  if (low === undefined || field === "product") return `${name}.`;
  return field === "solution_ml"
    ? `${name}: from ${Number(low) / 1000} to ${Number(high) / 1000} L.`
    : `${name}: from ${low} to ${high} ${unit}.`;
};

/** The recipe, or what is missing in words. */
export const readMaking = (typed: Typed, own: Settings) => {
  try {
    return { ...dilute(typed, own), fault: null };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    return { worked: null, madeMgPerL: null, fault: faultWords(fault) };
  }
};
