// From the wet part of a dip rod to what is left in a lying cask.

import { type DipInputs, leftByDip } from "../../domain/cellar/left.ts";
import { sediment } from "../../domain/cellar/sediment.ts";
import { DomainError } from "../../domain/errors.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";

export interface Wet {
  wet_mm: number;
  worked: ReturnType<typeof leftByDip>;
  /** By which measures. */
  by: string;
}

/** Typed millimetres, or centimetres with a tenth; null where they are no such figure. */
export const wetMm = (typed: string, unit: "mm" | "cm"): number | null => {
  const clean = typed.trim();
  if (unit === "mm") return /^\d{1,4}$/.test(clean) ? Number(clean) : null;
  return /^\d{1,3}(\.\d?)?$/.test(clean) ? Math.floor(Number(clean) * 10 + 0.5) : null;
};

const TILTED =
  "It is tilted, and the rod says nothing any more. Count the pints or weigh it, and type what is left.";
const NO_SIZE = "Nobody has noted what it holds, so the rod says nothing. Type what is left.";

/** Null where its kind is not known: then no sediment is taken off. */
const sedimentMl = ({ kind, capacity_ml }: Standing, settings: Settings): number | null =>
  kind === null ? null : sediment({ kind, holds_ml: capacity_ml }, settings).result.sediment_ml;

const BY_OWN = "By this cask's own inside measures.";
const BY_MODEL = "By a model of its size: its own inside measures are not on record.";

/** A cask whose measures and size disagree goes by its measures alone. */
const measured = (inputs: DipInputs, settings: Settings) => {
  try {
    return leftByDip(inputs, settings);
  } catch (fault) {
    if (!(fault instanceof DomainError) || fault.facts["field"] !== "holds_ml") throw fault;
    return leftByDip({ ...inputs, holds_ml: null }, settings);
  }
};

/** What is left, or why the rod cannot say. */
export const byWet = (
  wet_mm: number,
  standing: Standing,
  settings: Settings,
): Wet | { cannot: string } => {
  const { inside, capacity_ml: holds_ml } = standing;
  if (standing.serving?.stooped != null) return { cannot: TILTED };
  if (inside === null && holds_ml === null) return { cannot: NO_SIZE };
  const inputs = { wet_mm, tilted: false, holds_ml, ...inside };
  try {
    const sediment_ml = sedimentMl(standing, settings);
    const worked = measured({ ...inputs, sediment_ml }, settings);
    return { wet_mm, worked, by: inside === null ? BY_MODEL : BY_OWN };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    const { field, high } = fault.facts;
    if (field !== "wet_mm") return { cannot: NO_SIZE };
    return { cannot: `Inside it is ${String(high)} mm deep at the bung; no more can be wet.` };
  }
};
