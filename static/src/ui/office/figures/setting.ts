// Which figures a brewery may set, and what was typed for one: its value, or what is wrong with it.

import { FIGURES, type Figure, type FigureId } from "../../../domain/figures.ts";

/** What is not published to the letter, or differs from house to house. */
export const SETTABLE: readonly FigureId[] = (Object.keys(FIGURES) as FigureId[]).filter(
  (id) => FIGURES[id].low !== undefined,
);

export const isSettable = (id: string | undefined): id is FigureId =>
  (SETTABLE as readonly string[]).includes(id ?? "");

/** "From 5 to 20 °C." */
export const rangeWords = ({ low, high, unit }: Figure): string =>
  `From ${low} to ${high} ${unit}.`;

export type TypedFigure = { millionths: number } | { fault: string };

/** The ledger keeps millionths, which is as many places as can be typed. */
export const readFigure = (figure: Figure, text: string): TypedFigure => {
  const clean = text.trim().replace(",", ".");
  if (!/^\d{1,7}(\.\d{1,6})?$/.test(clean)) {
    return { fault: "A figure with at most six places, such as 1.45." };
  }
  const value = Number(clean);
  if (value < (figure.low ?? 0) || value > (figure.high ?? Number.POSITIVE_INFINITY)) {
    return { fault: rangeWords(figure) };
  }
  return { millionths: Math.floor(value * 1_000_000 + 0.5) };
};
