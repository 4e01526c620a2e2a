// When a cask on sale runs out at its pace, and which is the next one of its beer.

import type { Job } from "../../domain/cellar/jobs.ts";
import type { Planned } from "../../domain/cellar/plan.ts";
import { runOut } from "../../domain/cellar/run-out.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Dip } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";
import type { Full } from "../cellar/full.ts";
import { planFor } from "../cellar/plan.ts";
import type { Known } from "../words.ts";
import type { Served } from "./lists.ts";
import { sedimentMl } from "./sediment.ts";

export type RunsOut = ReturnType<typeof runOut>;

/** A cask on sale, when it will be empty, and what to do with the next one of its beer. */
export interface Ending {
  number: string;
  worked: RunsOut;
  /** Null where none of it is left in the cellar, or none is needed. */
  next: Planned | null;
}

/** Full at tapping and the dips since, whoever made them; one that rises again is left out. */
export const dipsOf = ({ contents, serving }: Served): Dip[] => {
  const from = serving.tapped?.since;
  if (from === undefined) return [];
  const since = contents.dips.filter(({ at }) => at > from);
  const dips: Dip[] = [];
  for (const dip of [{ at: from, left_ml: contents.volume_ml }, ...since].reverse()) {
    const [after] = dips;
    if (after === undefined || (dip.at < after.at && dip.left_ml >= after.left_ml)) {
      dips.unshift(dip);
    }
  }
  return dips;
};

/** Null while it has not been dipped since tapping, or where the dips tell no pace. */
export const runsOut = (served: Served, known: Known, settings: Settings): RunsOut | null => {
  const dips = dipsOf(served);
  if (dips.length < 2) return null;
  return attempt(() => {
    const sediment_ml = sedimentMl(served.standing, known, settings);
    const off_by_at = served.ready.off_at;
    return runOut({ now: known.now, dips, sediment_ml, off_by_at }, settings);
  });
};

/** What is further on its way comes first: nobody leaves a vented cask for a fresh one. */
const isUp = ({ standing }: Full): boolean => standing.serving !== null;

const nextOf = (
  served: Served,
  saleAt: string,
  others: readonly Full[],
  known: Known,
  settings: Settings,
): Planned | null => {
  const { now } = known;
  const same = others.filter(
    ({ beer, standing }) => beer === served.beer && standing.shape !== "keg",
  );
  const rows = planFor(same, saleAt < now ? now : saleAt, known, settings)?.result.casks ?? [];
  const up = new Set(same.filter(isUp).map(({ standing }) => standing.number));
  const soonest = [...rows].sort((a, b) => (a.ready_from_at < b.ready_from_at ? -1 : 1));
  return (
    rows.find((row) => row.can && up.has(row.number)) ??
    rows.find((row) => row.can) ??
    soonest[0] ??
    null
  );
};

/** For every container on sale that was dipped; what is gone first gets the next one first. */
export const endings = (
  onSale: readonly Served[],
  fulls: readonly Full[],
  known: Known,
  settings: Settings,
): Map<string, Ending> => {
  const found = new Map<string, Ending>();
  const taken = new Set<string>();
  const ending = onSale
    .map((served) => ({ served, worked: runsOut(served, known, settings) }))
    .filter((one): one is { served: Served; worked: RunsOut } => one.worked !== null)
    .sort((a, b) => (at(a.worked) < at(b.worked) ? -1 : 1));
  for (const { served, worked } of ending) {
    const { next_wanted_at: sale } = worked.result;
    const { number, shape } = served.standing;
    const others = fulls.filter(({ standing }) => !taken.has(standing.number));
    const needed = sale !== null && shape !== "keg";
    const next = needed ? nextOf(served, sale, others, known, settings) : null;
    if (next !== null) taken.add(next.number);
    found.set(number, { number, worked, next });
  }
  return found;
};

/** What stays for ever comes last. */
const at = ({ result }: RunsOut): string => result.gone_at ?? "9999";

/** What is to do with the next one, if anything still is. */
export const firstJob = ({ next }: Ending): Job | null => next?.jobs[0] ?? null;
