// What is on the stillage and on sale, in the order in which somebody has to see to it.

import type { Settings } from "../../domain/figures.ts";
import type { Serving, Standing } from "../../domain/standing.ts";
import { fitOf } from "../cellar/fit.ts";
import { asFull, type Full, fitted } from "../cellar/full.ts";
import type { Known } from "../words.ts";

/** A full container with serving under way. */
export interface Served extends Full {
  serving: Serving;
}

export interface BarLists {
  /** Tapped; what has to come off first stands first. */
  onSale: Served[];
  /** Vented and not tapped; what has worked longest stands first. */
  working: Served[];
  /** Put on the stillage and no more. */
  waiting: Served[];
}

const by =
  (key: (served: Served) => string) =>
  (a: Served, b: Served): number =>
    key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : a.standing.number < b.standing.number ? -1 : 1;

export const barLists = (
  containers: Iterable<Standing>,
  known: Known,
  settings: Settings = {},
): BarLists => {
  const served: Served[] = [];
  for (const standing of containers) {
    const { serving } = standing;
    const full = serving === null ? null : asFull(standing, known);
    if (full === null || serving === null) continue;
    const fit = () => fitOf(standing, known, settings);
    served.push({ ...fitted(full, settings, known.now, fit), serving });
  }
  const untapped = served.filter(({ serving }) => serving.tapped === null);
  return {
    onSale: served
      .filter(({ serving }) => serving.tapped !== null)
      .sort(by(({ serving, ready }) => ready.off_at ?? serving.tapped?.since ?? "")),
    working: untapped
      .filter(({ serving }) => serving.vented !== null)
      .sort(by(({ serving }) => serving.vented?.since ?? "")),
    waiting: untapped
      .filter(({ serving }) => serving.vented === null)
      .sort(by(({ serving }) => serving.stillaged?.since ?? "")),
  };
};
