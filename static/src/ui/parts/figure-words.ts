// Figures of the trade in words: the value of one, and how far it can be trusted.

import type { Figure } from "../../domain/figures.ts";
import { barHoursWords } from "./bar-hours.ts";

const KINDS: { [kind: string]: string } = {
  published: "Published",
  "common practice": "Common practice, no source",
  "from memory": "From memory",
};

/** "Published", "Common practice, no source" or "From memory"; common practice may have a source. */
export const kindWords = (kind: string, source: string | null): string =>
  kind === "common practice" && source !== null ? "Common practice" : (KINDS[kind] ?? kind);

/** A number as people read it; tiny ones with their power of ten. */
export const numberWords = (value: number): string =>
  value !== 0 && Math.abs(value) < 0.0001 ? value.toExponential(3) : String(value);

/** "1.4 volumes of CO2", "a 3.0378, b 0.0501", or that it is a table. */
export const valueWords = (value: unknown, unit: string): string => {
  if (typeof value === "number") return `${numberWords(value)} ${unit}`;
  if (Array.isArray(value) && value.every((one) => typeof one === "number")) {
    return `${value.map(numberWords).join(", ")} ${unit}`;
  }
  if (typeof value === "object" && value !== null) {
    const parts = Object.entries(value);
    if (parts.length <= 8 && parts.every(([, one]) => typeof one === "number")) {
      const each = parts.map(([name, one]) => `${name.replaceAll("_", " ")} ${numberWords(one)}`);
      return `${each.join(", ")} (${unit})`;
    }
  }
  return `A table (${unit})`;
};

/** The value of a figure; when the bar is open is told day by day. */
export const figureWords = (id: string, value: unknown, unit: string): string =>
  id === "bar_hours" ? barHoursWords(value as number[]) : valueWords(value, unit);

/** The value that counts: the brewery's own where it has one. */
export const standingValue = (id: string, figure: Figure, own: Readonly<Record<string, unknown>>) =>
  own[id] ?? figure.value;
