// Containers that are about to be filled, those of a kind that take the same together.

import { CONTAINER_KINDS } from "../../domain/containers.ts";
import { RANGES } from "../../domain/inputs.ts";
import { kindWords, litres } from "../words.ts";

/** One container: what it is, and how much goes in. */
export interface ToFill {
  kind: string | null;
  volume_ml: number;
  /** Its marked limit, null where nobody has entered it. */
  limit_millibar: number | null;
}

/** So many filled alike; the lowest of their marked limits counts. */
export interface Size extends ToFill {
  count: number;
}

/** The lower of two limits, of which either may not be known. */
export const lowerOf = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.min(a, b);

/** The largest first; a container that takes nothing yet is none. */
export const sizesOf = (all: readonly ToFill[]): Size[] => {
  const sizes = new Map<string, Size>();
  for (const one of all) {
    if (one.volume_ml <= 0) continue;
    const key = `${one.kind} ${one.volume_ml}`;
    const { count = 0, limit_millibar = null } = sizes.get(key) ?? {};
    const lowest = lowerOf(limit_millibar, one.limit_millibar);
    sizes.set(key, { ...one, count: count + 1, limit_millibar: lowest });
  }
  return [...sizes.values()].sort(
    (a, b) => b.volume_ml - a.volume_ml || ((a.kind ?? "") < (b.kind ?? "") ? -1 : 1),
  );
};

/** As the rules take a limit, bar: their own stop lies below the highest of it. */
export const limitBarOf = ({ limit_millibar }: ToFill): number | null =>
  limit_millibar === null ? null : Math.min(RANGES.limit_bar.high, limit_millibar / 1000);

/** "firkin"; with its litres where they are not the kind's own. */
export const sizeName = (kind: string | null, ml: number): string =>
  CONTAINER_KINDS[kind ?? ""]?.capacity_ml === ml
    ? kindWords(kind)
    : `${kindWords(kind)} of ${litres(ml)}`;

export const isKeg = ({ kind }: { kind: string | null }): boolean =>
  CONTAINER_KINDS[kind ?? ""]?.shape === "keg";
