// Amounts that are really given in place of those worked out, for one fill.

import type { DoseLine } from "./dose-line.ts";

/** By what is added, then by the mL of the fill; nought is a dose that is not given. */
export type Instead = Readonly<Record<string, Readonly<Record<number, number>>>>;

/** No scale at a bench weighs more, and no cask takes more than it holds. */
const MOST_G = 100_000;

/** What was typed for the dose of one size, null where it stands as worked out. */
export const typedAmount = (instead: Instead, what: string, volumeMl: number): number | null =>
  instead[what]?.[volumeMl] ?? null;

/** What goes in: as typed, or as worked out; null where neither is known. */
export const amountGiven = (instead: Instead, line: DoseLine, n: number): number | null => {
  const proposed = line.each?.[n] ?? null;
  const volumeMl = line.sizes[n]?.volume_ml ?? 0;
  return typedAmount(instead, line.what, volumeMl) ?? proposed;
};

/** Another amount for one size; null gives it back to what is worked out. */
export const withAmount = (
  instead: Instead,
  what: string,
  volumeMl: number,
  amount: number | null,
): Instead => {
  const { [volumeMl]: _, ...others } = instead[what] ?? {};
  return { ...instead, [what]: amount === null ? others : { ...others, [volumeMl]: amount } };
};

/** An amount as typed, or what is wrong with it in words. */
export const readAmount = (
  text: string,
  unit: "mL" | "g",
  volumeMl: number,
): { amount: number } | { fault: string } => {
  const clean = text.trim();
  const most = unit === "mL" ? volumeMl : MOST_G;
  return /^\d{1,6}$/.test(clean) && Number(clean) <= most
    ? { amount: Number(clean) }
    : { fault: `Whole ${unit}, from 0 to ${most}.` };
};
