/** The containers that a dose is worked out for. Twin of cellarapp/domain/bench/fillings.py. */
import { Asked } from "../inputs.ts";
import { halfUpWhole } from "../rounding.ts";

const MOST_ROWS = 200;

/** Containers filled alike: so many of so many millilitres each. */
export interface Filling {
  volume_ml: number;
  count: number;
}

/** The rows asked about, each with volume_ml and count. */
export function askedFillings(asked: Asked, field = "containers"): Filling[] {
  return asked.parts(field, MOST_ROWS, "rows").map((row, index) => {
    const part = new Asked(row, ["volume_ml", "count"], `${field}[${index}].`);
    return { volume_ml: part.number("volume_ml"), count: part.number("count") };
  });
}

/** All of them together. */
export function totalMl(fillings: readonly Filling[]): number {
  return fillings.reduce((sum, filling) => sum + filling.volume_ml * filling.count, 0);
}

/** What to draw: the sum of the doses as they are given, in mL or g to one decimal. */
export function inAll(fillings: readonly { count: number }[], doses: readonly number[]): number {
  const given = fillings.map(({ count }, n) => count * halfUpWhole((doses[n] ?? 0) * 10));
  return given.reduce((sum, tenths) => sum + tenths, 0) / 10;
}
