// What the ledger says of a container now, facet by facet and in one sentence.

import { londonDate } from "../../domain/calendar.ts";
import { readiness } from "../../domain/readiness.ts";
import type { Mark, Standing } from "../../domain/standing.ts";
import { daysOverdue } from "../../domain/trips.ts";
import { litres } from "./amounts.ts";
import { toldWords } from "./done.ts";
import { beerDoc, type Known } from "./known.ts";
import { brewName, customerName, placeName } from "./names.ts";
import { ageWords, dateWords, dayWords, timeWords } from "./time.ts";

/** A sentence about one facet, who noted it, and whether it is good or needs looking at. */
export interface Facet {
  says: string;
  mark: Mark;
  tone?: "look" | "fine";
}

const when = (mark: Mark, known: Known): string => timeWords(mark.since, known.now);

const tail = (why: string): string => (why === "" ? "" : `: ${why}`);

/** Kept out of use, and why. */
export const heldFacet = (s: Standing, known: Known): Facet | null => {
  if (s.held === null) return null;
  const state = { set_aside: "Set aside", missing: "Missing", scrapped: "Scrapped" }[s.held.state];
  return {
    says: `${state} since ${when(s.held, known)}${tail(s.held.why)}`,
    mark: s.held,
    tone: "look",
  };
};

/** Where it is. */
export const placeFacet = (s: Standing, known: Known): Facet | null => {
  if (s.trip !== null) {
    const late = daysOverdue(s.trip, known.now);
    const due = s.trip.due_on === null ? "" : `, due back ${dayWords(s.trip.due_on, known.now)}`;
    const told = s.trip.told ? `; they say ${toldWords(s.trip.told.says)}` : "";
    const says = `Out at ${customerName(known, s.trip.customer)} since ${when(s.trip, known)}${due}${told}`;
    return late > 0
      ? { says: `${says}: ${late} ${late === 1 ? "day" : "days"} late`, mark: s.trip, tone: "look" }
      : { says, mark: s.trip };
  }
  if (s.place === null) return null;
  const at =
    s.place.at === "brewery" ? "At the brewery, nobody noted where" : placeName(known, s.place.at);
  return { says: `${at}, since ${when(s.place, known)}`, mark: s.place };
};

/** How far the beer in it has come. */
export const beerFacet = (s: Standing, known: Known): Facet | null => {
  const contents = s.contents;
  if (contents === null) return null;
  const ready = readiness(s, beerDoc(known, contents.gyle), known.now);
  const racked = `racked ${when(contents, known)}`;
  switch (ready.stage) {
    case "conditioning":
      return {
        says: `${racked}, conditioning until ${timeWords(ready.ready_at ?? "", known.now)}`,
        mark: contents,
      };
    case "past":
      return {
        says: pastWords(s, ready.best_before, ready.off_at, known),
        mark: contents,
        tone: "look",
      };
    case "stillaged":
    case "working":
    case "on_sale":
      return servingFacet(s, ready.off_at, known);
    default:
      return {
        says: `ready since ${timeWords(ready.ready_at ?? "", known.now)}, ${racked}`,
        mark: contents,
        tone: "fine",
      };
  }
};

const pastWords = (s: Standing, best: string | null, off: string | null, known: Known): string =>
  best !== null && best < londonDate(known.now)
    ? `past its best-before day, ${dateWords(best, known.now)}`
    : `on sale since ${s.serving?.tapped ? when(s.serving.tapped, known) : "?"}, should be off since ${timeWords(off ?? known.now, known.now)}`;

const servingFacet = (s: Standing, off: string | null, known: Known): Facet | null => {
  const { stillaged, vented, tapped } = s.serving ?? {
    stillaged: null,
    vented: null,
    tapped: null,
  };
  if (tapped !== null && s.contents !== null) {
    const left = `${s.contents.dipped ? "" : "at most "}${litres(s.contents.left_ml)} left`;
    return {
      says: `on sale ${ageWords(tapped.since, known.now)}, ${left}, off by ${timeWords(off ?? "", known.now)}`,
      mark: tapped,
    };
  }
  if (vented !== null) {
    const spile = vented.spile === null ? "" : `, ${vented.spile} spile in`;
    return { says: `working since ${when(vented, known)}${spile}`, mark: vented };
  }
  return stillaged === null
    ? null
    : { says: `on the stillage since ${when(stillaged, known)}`, mark: stillaged };
};

/** How clean it is inside; says nothing while it is full of beer. */
export const cleanFacet = (s: Standing, known: Known): Facet | null => {
  if (s.clean === null || s.contents !== null) return null;
  const at = when(s.clean, known);
  switch (s.clean.state) {
    case "washed":
      return { says: `Washed ${at}`, mark: s.clean, tone: "fine" };
    case "passed":
      return { says: `Inspected ${at} and passed`, mark: s.clean, tone: "fine" };
    case "failed":
      return { says: `Failed inspection ${at}`, mark: s.clean, tone: "look" };
    case "dirty":
      return { says: `Empty and dirty since ${at}`, mark: s.clean };
    default:
      return null;
  }
};

/** What is in it: "Oystercatcher, gyle 318, 40.9 L, best before 18 Dec". */
export const contentsWords = (s: Standing, known: Known): string => {
  if (s.contents === null) return "";
  const best = s.contents.best_before;
  return `${brewName(known, s.contents.gyle)}, ${litres(s.contents.left_ml)}${best === null ? "" : `, best before ${dateWords(best, known.now)}`}`;
};

/** The one sentence of a list: what decides about this container now. */
export const standingWords = (s: Standing, known: Known): string =>
  (
    heldFacet(s, known) ??
    (s.trip ? placeFacet(s, known) : null) ??
    beerFacet(s, known) ??
    cleanFacet(s, known) ??
    placeFacet(s, known)
  )?.says ?? "Nothing is noted of it yet";
