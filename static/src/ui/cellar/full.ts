// A full container at the brewery, and why somebody should look at it before the others.

import { daysBetween, londonDate } from "../../domain/calendar.ts";
import { openQueries } from "../../domain/queries.ts";
import { type Readiness, readiness } from "../../domain/readiness.ts";
import type { Standing } from "../../domain/standing.ts";
import { beerDoc, type Known, text } from "../words/known.ts";

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

/** The container as one that is full and here; null when it is neither. */
export const asFull = (standing: Standing, known: Known): Full | null => {
  const { contents } = standing;
  if (contents === null || standing.trip !== null) return null;
  const ready = readiness(standing, beerDoc(known, contents.gyle) ?? null, known.now);
  const beer = text(known.gyles.get(contents.gyle), "beer");
  return { standing, contents, beer, ready, look: lookOf(standing, ready, known.now) };
};
