// When each container is fit for what, by the rule. A cellar of hundreds asks again with every
// minute and every entry, so an answer is kept until what it hangs on has changed or has aged.

import { ready } from "../../domain/cellar/ready.ts";
import { type Around, caskInputs } from "../../domain/cellar/told.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";
import { beerDoc, type Known } from "../words/known.ts";

export type Fit = ReturnType<typeof ready>;

/** "If set up now" may be so old: nobody plans a cask by the minute. */
const STANDS_MS = 10 * 60_000;

export const around = (standing: Standing, known: Known): Around => {
  const gyle = standing.contents?.gyle ?? "";
  return {
    beer: beerDoc(known, gyle),
    gyle: known.gyles.get(gyle) ?? null,
    place: known.places.get(standing.place?.at ?? "") ?? null,
  };
};

/** Null where there is no beer, or where what was noted cannot be: the question about it says so. */
const workedOut = (standing: Standing, at: Around, now: string, settings: Settings): Fit | null => {
  const inputs = caskInputs(standing, at);
  if (inputs === null) return null;
  return attempt(() => ready({ ...inputs, now }, settings));
};

interface Kept extends Around {
  turn: number;
  settings: Settings;
  fit: Fit | null;
}

/** By the standing itself: another entry makes another standing, and the old answer goes with it. */
const kept = new WeakMap<Standing, Kept>();

export const fitOf = (standing: Standing, known: Known, settings: Settings): Fit | null => {
  const at = around(standing, known);
  const turn = Math.floor(Date.parse(known.now) / STANDS_MS);
  const last = kept.get(standing);
  const holds =
    last?.turn === turn &&
    last.settings === settings &&
    last.beer === at.beer &&
    last.gyle === at.gyle &&
    last.place === at.place;
  if (last !== undefined && holds) return last.fit;
  const fit = workedOut(standing, at, known.now, settings);
  kept.set(standing, { ...at, turn, settings, fit });
  return fit;
};

export type ReasonOf = Fit["result"]["reasons"][number]["of"];

/** Whether the rule says that this time is only an estimate. */
export const isEstimate = (fit: Fit, of: ReasonOf): boolean =>
  fit.result.reasons.some((reason) => reason.of === of && reason.sure === "estimate");
