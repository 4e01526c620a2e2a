// Why a container stands where it does in the Cellar, in words and dates.

import { daysBetween, londonDate } from "../../domain/calendar.ts";
import { openQueries } from "../../domain/queries.ts";
import {
  beerFacet,
  beerOfGyle,
  count,
  dateWords,
  dayWords,
  heldFacet,
  type Known,
  kindName,
  placeName,
  queryWords,
  sentence,
  timeWords,
} from "../words.ts";
import { isEstimate } from "./fit.ts";
import type { Full } from "./full.ts";

/** "104 Oystercatcher": number first, it is what is painted on it. */
export const fullTitle = ({ standing, contents }: Full, known: Known): string =>
  `${standing.number} ${beerOfGyle(known, contents.gyle) || "Beer not known here"}`;

/** "in 2 days", "tomorrow", "today", "5 days ago". */
export const awayWords = (day: string, now: string): string => {
  const days = daysBetween(londonDate(now), day);
  if (days === 0) return "today";
  if (days === 1) return "tomorrow";
  if (days === -1) return "yesterday";
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
};

const bestBeforeWords = ({ ready }: Full, now: string): string =>
  ready.best_before === null
    ? "no best-before day"
    : `best before ${dateWords(ready.best_before, now)}`;

const rackedWords = ({ contents }: Full, now: string): string =>
  `racked ${dateWords(londonDate(contents.since), now)}`;

/** A cask that has been carried about full has had its sediment stirred each time. */
const movedWords = ({ contents }: Full): string =>
  contents.moves > 1 ? `, moved ${count(contents.moves, "time")}` : "";

/** The hour matters while it is still to come, or on the day itself. */
const readyWords = (full: Full, now: string): string => {
  const from = full.ready.ready_at ?? now;
  if (full.ready.stage === "conditioning") {
    const fit = full.fit();
    const about = fit !== null && isEstimate(fit, "conditioned_from_at") ? "about " : "";
    return `conditioning until ${about}${timeWords(from, now)}`;
  }
  const day = londonDate(from);
  return `ready since ${day === londonDate(now) ? timeWords(from, now) : dayWords(day, now)}`;
};

/** A keg is tapped when it is wanted; a cask has to be thought of days before. */
const saleWords = (full: Full, now: string): string => {
  if (full.standing.shape === "keg" || full.standing.serving?.tapped != null) return "";
  const fit = full.fit();
  if (fit === null) return "";
  const { ready_from_at: from } = fit.result;
  if (from <= now) return `, can be sold since ${timeWords(from, now)}`;
  const about = isEstimate(fit, "ready_from_at") ? "about " : "";
  return `, can be sold from ${about}${timeWords(from, now)}`;
};

const LOOKS: { [look: string]: (full: Full, known: Known) => string } = {
  held: ({ standing }, known) => heldFacet(standing, known)?.says ?? "",
  past: (full, known) => pastWords(full, known),
  near: (full, { now }) =>
    `best before ${awayWords(full.ready.best_before ?? "", now)}, ${dateWords(full.ready.best_before ?? "", now)}${movedWords(full)}`,
  query: ({ standing }, known) => {
    const [first] = openQueries(standing);
    return first === undefined ? "" : queryWords(first, known);
  },
};

const pastWords = (full: Full, known: Known): string => {
  const { best_before: best, off_at: off } = full.ready;
  const { now } = known;
  if (best !== null && best < londonDate(now)) {
    return `past best before, which was ${awayWords(best, now)}, ${dateWords(best, now)}`;
  }
  return `on sale too long: should have been off by ${timeWords(off ?? now, now)}`;
};

/**
 * The sentence without the place: the reason that decides, then the dates behind it. Of what is
 * ready nobody asks any more when it was racked.
 */
const becauseWords = (full: Full, known: Known): string => {
  const { now } = known;
  if (full.look !== null) return LOOKS[full.look]?.(full, known) ?? "";
  if (full.standing.serving !== null) {
    return `${beerFacet(full.standing, known)?.says ?? ""}${saleWords(full, now)}`;
  }
  const dates = `${readyWords(full, now)}, ${bestBeforeWords(full, now)}`;
  return full.ready.stage === "ready"
    ? `${dates}${saleWords(full, now)}`
    : `${dates}, ${rackedWords(full, now)}`;
};

/** "Ready since Mon, best before 18 Dec. Firkin, cold room." */
export const fullReason = (full: Full, known: Known): string => {
  const { place, kind } = full.standing;
  const where = place === null || place.at === "brewery" ? "" : `, ${placeName(known, place.at)}`;
  const because = sentence(becauseWords(full, known));
  return `${because}${/[.?!]$/.test(because) ? "" : "."} ${kindName(kind)}${where}.`;
};
