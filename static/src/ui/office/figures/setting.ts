// Which figures a brewery may set, and what was typed for one: its value, or what is wrong with it.

import { FIGURES, type Figure, type FigureId, MILLIONTHS } from "../../../domain/figures.ts";
import { count, sentence } from "../../words.ts";

/** What is not published to the letter, or differs from house to house. */
export const SETTABLE: readonly FigureId[] = (Object.keys(FIGURES) as FigureId[]).filter(
  (id) => FIGURES[id].low !== undefined,
);

export const isSettable = (id: string | undefined): id is FigureId =>
  (SETTABLE as readonly string[]).includes(id ?? "");

/** "From 5 to 20 °C." */
export const rangeWords = ({ low, high, unit = "" }: Figure): string =>
  `From ${low} to ${high} ${unit}.`;

/** The value with the facts of its entry, in millionths: as many places as can be typed. */
export type TypedFigure =
  | { value: number; facts: { value_millionths: number } }
  | { value: number[]; facts: { values_millionths: number[] } }
  | { fault: string };

export const isList = ({ least }: Figure): boolean => least !== undefined;

const PLACES = /^\d{1,7}(\.\d{1,6})?$/;

const millionths = (text: string): number => Math.floor(Number(text) * MILLIONTHS + 0.5);

const within = ({ low = 0, high = Number.POSITIVE_INFINITY }: Figure, text: string): boolean =>
  Number(text) >= low && Number(text) <= high;

const readOne = (figure: Figure, text: string): TypedFigure => {
  const clean = text.trim().replace(",", ".");
  if (!PLACES.test(clean)) {
    return { fault: "A figure with at most six places, such as 1.45." };
  }
  return within(figure, clean)
    ? { value: Number(clean), facts: { value_millionths: millionths(clean) } }
    : { fault: rangeWords(figure) };
};

const readList = (figure: Figure, text: string): TypedFigure => {
  const parts = text.split(/[\s;]+|,\s+/).filter(Boolean);
  const each = parts.map((part) => part.replace(",", "."));
  const { least = 0, most = 0 } = figure;
  if (!each.every((one) => PLACES.test(one)) || each.length < least || each.length > most) {
    return { fault: `${sentence(countWords(figure))} with spaces between, such as 0 0.5 1.` };
  }
  if (!each.every((one) => within(figure, one))) return { fault: rangeWords(figure) };
  const rises = each.every((one, n) => n === 0 || Number(one) >= Number(each[n - 1]));
  return rises
    ? { value: each.map(Number), facts: { values_millionths: each.map(millionths) } }
    : { fault: "The least first: none below the one before it." };
};

const countWords = ({ least = 0, most = 0 }: Figure): string =>
  least === most ? count(least, "figure") : `${least} to ${count(most, "figure")}`;

export const readFigure = (figure: Figure, text: string): TypedFigure =>
  isList(figure) ? readList(figure, text) : readOne(figure, text);

/** As it stands in the field, to be changed. */
export const typedFigure = (value: unknown): string =>
  Array.isArray(value) ? value.join(" ") : String(value);

/** What may be typed: "From 5 to 20 °C.", "3 figures, the least first, from 0 to 30 % vol." */
export const hintWords = (figure: Figure): string => {
  const { low, high, unit = "" } = figure;
  return isList(figure)
    ? `${countWords(figure)}, the least first, from ${low} to ${high} ${unit}.`
    : rangeWords(figure);
};
