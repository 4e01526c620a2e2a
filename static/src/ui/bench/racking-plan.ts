// Which containers to fill from a gyle: counted from the register, wishes first, by the rule.

import { rackingPlan } from "../../domain/bench/racking.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { count, litres } from "../words.ts";
import { lowerOf, type Size, sizeName } from "./sizes.ts";

/** Containers of one kind and size that are empty and here. */
export interface Row {
  key: string;
  kind: string;
  capacity_ml: number;
  /** The lowest marked limit of those that are planned with, where any has a mark. */
  limit_millibar: number | null;
  clean: number;
  /** Neither washed nor dirty on record, as what was just entered; planned with where they count. */
  unknown: number;
  dirty: number;
}

type Washing = "clean" | "unknown" | "dirty";

const washingOf = ({ clean }: Standing): Washing => {
  if (clean === null) return "unknown";
  return clean.state === "washed" || clean.state === "passed" ? "clean" : "dirty";
};

const MOST_AT_ONCE = 200;

/**
 * By kind and size, the largest first; what is full, out, missing or set aside is not counted.
 * `unknownToo`: somebody has said that those with no wash on record are clean.
 */
export const rowsHere = (containers: Iterable<Standing>, unknownToo = false): Row[] => {
  const rows = new Map<string, Row>();
  for (const standing of containers) {
    const { registered, kind, capacity_ml, contents, trip, held } = standing;
    if (!registered || kind === null || capacity_ml === null) continue;
    if (contents !== null || trip !== null || held !== null) continue;
    const key = `${kind} ${capacity_ml}`;
    const row = rows.get(key) ?? {
      key,
      kind,
      capacity_ml,
      limit_millibar: null,
      clean: 0,
      unknown: 0,
      dirty: 0,
    };
    const washing = washingOf(standing);
    const counts = washing === "clean" || (washing === "unknown" && unknownToo);
    const limit_millibar = counts
      ? lowerOf(row.limit_millibar, standing.limit_millibar)
      : row.limit_millibar;
    rows.set(key, { ...row, limit_millibar, [washing]: row[washing] + 1 });
  }
  return [...rows.values()].sort(
    (a, b) => b.capacity_ml - a.capacity_ml || (a.key < b.key ? -1 : 1),
  );
};

/** "firkin"; with its size where that is not the kind's own. */
export const rowName = ({ kind, capacity_ml }: Row): string => sizeName(kind, capacity_ml);

export type Wishes = Readonly<Record<string, number>>;

/** No more of each than the beer fills, and no more in all than are planned at once: wishes first. */
const offered = (rows: readonly Row[], usableMl: number, wishes: Wishes, unknownToo: boolean) => {
  const sizes = rows.map((row) => {
    const here = row.clean + (unknownToo ? row.unknown : 0);
    const most = Math.min(here, Math.ceil(usableMl / row.capacity_ml));
    const wished = Math.min(MOST_AT_ONCE, wishes[row.key] ?? 0);
    return { capacity_ml: row.capacity_ml, most, wished };
  });
  let room = MOST_AT_ONCE;
  const take = (n: number): number => {
    const taken = Math.min(n, room);
    room -= taken;
    return taken;
  };
  const granted = sizes.map(({ most, wished }) => take(Math.min(most, wished)));
  return sizes.map(({ capacity_ml, most, wished }, n) => {
    const first = granted[n] ?? 0;
    return { capacity_ml, available: first + take(most - first), wished };
  });
};

export const planOf = (
  rows: readonly Row[],
  vesselMl: number,
  lossMl: number,
  wishes: Wishes,
  own: Settings,
  unknownToo = false,
) => {
  const loss = Math.min(lossMl, vesselMl);
  const sizes = offered(rows, vesselMl - loss, wishes, unknownToo);
  const worked = rackingPlan({ vessel_ml: vesselMl, loss_ml: loss, sizes }, own);
  const fills = rows.map((row, n) => ({
    row,
    fill: worked.result.sizes[n]?.fill ?? 0,
    unmet: worked.result.sizes[n]?.unmet ?? 0,
  }));
  return { worked, fills };
};

/** "3 clean, 2 not washed on record, 1 to wash" */
export const washedWords = ({ clean, unknown, dirty }: Row): string =>
  [
    `${clean} clean`,
    unknown === 0 ? "" : `${unknown} not washed on record`,
    dirty === 0 ? "" : `${dirty} to wash`,
  ]
    .filter(Boolean)
    .join(", ");

/** Of how many nobody has noted a wash, and whether they are planned with; "" where of none. */
export const unknownWords = (rows: readonly Row[], unknownToo: boolean): string => {
  const unknown = rows.reduce((sum, row) => sum + row.unknown, 0);
  if (unknown === 0) return "";
  const of = `${count(unknown, "container")} here ${unknown === 1 ? "has" : "have"} no wash on record`;
  if (unknownToo) return `${of}: planned with all the same.`;
  return `${of}, and ${unknown === 1 ? "is" : "are"} not planned with.`;
};

type Plan = ReturnType<typeof planOf>;

/** What is planned to be filled, for the doses. */
export const sizesIn = ({ fills }: Plan): Size[] =>
  fills
    .filter(({ fill }) => fill > 0)
    .map(({ row: { kind, capacity_ml, limit_millibar }, fill }) => ({
      kind,
      volume_ml: capacity_ml,
      limit_millibar,
      count: fill,
    }));

const manyOf = (n: number, row: Row): string =>
  /^\d/.test(rowName(row)) ? `${n} × ${rowName(row)}` : count(n, rowName(row));

/** "12 firkins and 2 pins, 532 L in all." */
export const fillWords = ({ fills, worked }: Plan): string => {
  const parts = fills.filter(({ fill }) => fill > 0).map(({ row, fill }) => manyOf(fill, row));
  if (parts.length === 0) return "Nothing can be filled as it stands.";
  return `${parts.join(", ")}: ${litres(worked.result.racked_ml)} in all.`;
};

/** What is left, and what it is short of. */
export const leftWords = ({ fills, worked }: Plan): string => {
  const { left_ml, short } = worked.result;
  if (left_ml === 0) return "Nothing is left over.";
  const left = `${litres(left_ml)} left over`;
  if (short === null) return `${left}, and no clean container for it.`;
  const name = fills.find(({ row }) => row.capacity_ml === short.capacity_ml)?.row;
  const what = name ? rowName(name) : "container";
  return `${left}: short of a ${what} of ${litres(short.capacity_ml)}, with ${litres(short.headspace_ml)} of air above it.`;
};

export const unmetWords = ({ fills }: Plan): string => {
  const unmet = fills.filter((one) => one.unmet > 0).map(({ row, unmet }) => manyOf(unmet, row));
  return unmet.length === 0 ? "" : `Wished for and not possible: ${unmet.join(", ")}.`;
};
