/**
 * The one check of inputs.ts that figures need too. It stands alone, so that the first screen, which
 * needs figures, does not wait for the ranges of every field.
 */
import { outOfRange } from "./errors.ts";

/** The value as a number from low to high, either end included. Throws out-of-range. */
export function numberIn(
  field: string,
  value: unknown,
  low: number | null,
  high: number | null,
  unit: string,
  why: string,
): number {
  if (
    typeof value !== "number" ||
    !Number.isFinite(value) ||
    (low !== null && value < low) ||
    (high !== null && value > high)
  ) {
    throw outOfRange({ field, given: shown(value), low, high, unit, why });
  }
  return value;
}

/** What was given, in a form that an answer can carry. */
export function shown(value: unknown): unknown {
  if (value === undefined || value === null) return null;
  if (typeof value === "boolean" || typeof value === "string") return value;
  if (typeof value !== "number") return "not a number";
  if (Number.isNaN(value)) return "NaN";
  return Number.isFinite(value) ? value : "infinite";
}
