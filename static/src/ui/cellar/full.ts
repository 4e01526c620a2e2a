// A full container at the brewery, and why somebody should look at it before the others.

import { daysBetween, londonDate } from "../../domain/calendar.ts";
import type { Settings } from "../../domain/figures.ts";
import { openQueries } from "../../domain/queries.ts";
import { type Readiness, readiness, stageOf } from "../../domain/readiness.ts";
import { isFullHere, type Standing } from "../../domain/standing.ts";
import { beerDoc, type Known, text } from "../words/known.ts";
import type { Fit } from "./fit.ts";

export type Contents = NonNullable<Standing["contents"]>;

/** Why a person should decide about it: kept out of use, gone past its time, soon to, or doubted. */
export type Look = "held" | "past" | "near" | "query";

export interface Full {
  standing: Standing;
  contents: Contents;
  /** The id of its beer, "" where the gyle is not known to this phone. */
  beer: string;
  ready: Readiness;
  look: Look | null;
  /**
   * What the rule says of it; null where it can say nothing. Asked for when it is looked at: a
   * cellar holds hundreds, and a screen a few.
   */
  fit: () => Fit | null;
}

/**
 * With so many days left it is too late to send and time to sell here: a pub wants a week.
 * Ours to choose, and only a matter of where a line stands in the list.
 */
export const NEAR_DAYS = 7;

const nearItsEnd = (bestBefore: string | null, now: string): boolean =>
  bestBefore !== null && daysBetween(londonDate(now), bestBefore) <= NEAR_DAYS;

/** On the stillage it is being dealt with; there only what has gone past its time is odd. */
const lookOf = (standing: Standing, ready: Readiness, now: string): Look | null => {
  if (standing.held !== null) return "held";
  if (ready.stage === "past") return "past";
  if (standing.serving !== null) return null;
  if (nearItsEnd(ready.best_before, now)) return "near";
  return openQueries(standing).length > 0 ? "query" : null;
};

const nothing = (): null => null;

/** The container as one that is full and here; null when it is neither. */
export const asFull = (standing: Standing, known: Known): Full | null => {
  const { contents } = standing;
  if (contents === null || !isFullHere(standing)) return null;
  const ready = readiness(standing, beerDoc(known, contents.gyle) ?? null, known.now);
  const beer = text(known.gyles.get(contents.gyle), "beer");
  return {
    standing,
    contents,
    beer,
    ready,
    look: lookOf(standing, ready, known.now),
    fit: nothing,
  };
};

/** The times by the rule, which heed the brewery's own figures and warm or cold days. */
const byRule = (full: Full, now: string): Full => {
  const fit = full.fit();
  if (fit === null) return full;
  const { conditioned_from_at: ready_at, off_by_at: off_at } = fit.result;
  const stage = stageOf(full.standing, ready_at, off_at, now);
  const ready = { ...full.ready, ready_at, off_at, stage };
  return { ...full, ready, look: lookOf(full.standing, ready, now) };
};

/** With these at their usual values a container has conditioned after its beer's days, no more. */
const DECIDES = ["conditioning_q10", "conditioning_days"] as const;

/** The same with what the rule says; its stage by the rule wherever that can be another one. */
export const fitted = (full: Full, settings: Settings, now: string, fit: Full["fit"]): Full => {
  const asked = { ...full, fit };
  const plain = full.standing.serving === null && DECIDES.every((name) => !(name in settings));
  return plain ? asked : byRule(asked, now);
};
