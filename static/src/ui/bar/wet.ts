// From the wet part of a dip rod to what is left in a cask, lying or standing on its head.

import { type DipInputs, leftByDip, type leftByWeight } from "../../domain/cellar/left.ts";
import type { Facts } from "../../domain/entries.ts";
import { DomainError } from "../../domain/errors.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import type { Known } from "../words.ts";
import { sedimentMl } from "./sediment.ts";

/** What is left by something measured rather than by what was typed. */
export interface Measured {
  worked: ReturnType<typeof leftByDip> | ReturnType<typeof leftByWeight>;
  /** By which measures. */
  by: string;
  /** What of it is kept with the dip. */
  facts: Facts;
}

type Laid = NonNullable<DipInputs["laid"]>;

/** Typed millimetres, or centimetres with a tenth; null where they are no such figure. */
export const wetMm = (typed: string, unit: "mm" | "cm"): number | null => {
  const clean = typed.trim();
  if (unit === "mm") return /^\d{1,4}$/.test(clean) ? Number(clean) : null;
  return /^\d{1,3}(\.\d?)?$/.test(clean) ? Math.floor(Number(clean) * 10 + 0.5) : null;
};

const TILTED =
  "It is tilted, and the rod says nothing any more. Count the pints or weigh it, and type what is left.";
const NO_SIZE = "Nobody has noted what it holds, so the rod says nothing. Type what is left.";

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
  laid: Laid,
  standing: Standing,
  known: Known,
  settings: Settings,
): Measured | { cannot: string } => {
  const { inside, capacity_ml: holds_ml } = standing;
  if (standing.serving?.stooped != null) return { cannot: TILTED };
  if (inside === null && holds_ml === null) return { cannot: NO_SIZE };
  const inputs = { wet_mm, laid, tilted: false, holds_ml, ...inside };
  try {
    const sediment_ml = sedimentMl(standing, known, settings);
    const worked = measured({ ...inputs, sediment_ml }, settings);
    const by = inside === null ? BY_MODEL : BY_OWN;
    // A rod put through the bung is what a tilted cask makes doubtful.
    return { worked, by, facts: laid === "lying" ? { wet_mm } : {} };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    const { field, high } = fault.facts;
    if (field !== "wet_mm") return { cannot: NO_SIZE };
    const deep = laid === "lying" ? "deep at the bung" : "long from head to head";
    return { cannot: `Inside it is ${String(high)} mm ${deep}; no more can be wet.` };
  }
};
