// What the Bar says of each container: how long, with what in the shive, how much, until when.

import { londonDate } from "../../domain/calendar.ts";
import type { Vent } from "../../domain/standing.ts";
import { isEstimate } from "../cellar/fit.ts";
import { ageWords, dateWords, type Known, litres, timeWords } from "../words.ts";
import type { Served } from "./lists.ts";
import { wholePints } from "./pints.ts";

const spileWords = (vent: Vent | null): string =>
  vent?.spile == null ? "" : `${vent.spile} spile in`;

const agoWords = (since: string, now: string): string => {
  const age = ageWords(since, now);
  return age === "just now" ? age : `${age} ago`;
};

/** Until somebody dips it, the fill is all that is known: the true figure is that or less. */
export const leftWords = ({ contents }: Served, now: string): string => {
  const amount = `${litres(contents.left_ml)}, ${wholePints(contents.left_ml)} pints`;
  if (contents.dipped === null) return `Not dipped yet; ${amount} when filled`;
  return `${amount} left, dipped ${agoWords(contents.dipped.since, now)}`;
};

const offWords = ({ ready }: Served, now: string): string => {
  const { best_before: best, off_at: off } = ready;
  if (best !== null && best < londonDate(now)) {
    return `Past best before, ${dateWords(best, now)}: take it off`;
  }
  if (off === null) return "";
  return off < now ? `Should be off since ${timeWords(off, now)}` : `Off by ${timeWords(off, now)}`;
};

/** Tapped ahead of the sale it was picked for, it is not drawn from yet. */
const sinceWords = ({ serving: { tapped }, standing: { planned } }: Served, now: string) => {
  if (tapped === null) return "On sale";
  return planned !== null && planned.sale_at > now
    ? `Tapped ${agoWords(tapped.since, now)} for ${timeWords(planned.sale_at, now)}`
    : `On sale ${ageWords(tapped.since, now)}`;
};

export const onSaleWords = (served: Served, now: string): string => {
  const { vented, stooped } = served.serving;
  const spile = served.standing.shape === "keg" ? "" : spileWords(vented);
  const first = sinceWords(served, now);
  const tilted = stooped === null ? "" : ", tilted";
  return [
    `${first}${spile === "" ? "" : `, ${spile}`}${tilted}`,
    leftWords(served, now),
    offWords(served, now),
  ]
    .filter(Boolean)
    .map((words) => `${words}.`)
    .join(" ");
};

/** From when it can be sold by the rule, and that this is an estimate where it is one. */
const soldWords = (served: Served, now: string): string => {
  const fit = served.fit();
  if (fit === null || served.ready.stage === "past") return "";
  const { ready_from_at: from } = fit.result;
  if (from <= now) return ` Can be sold since ${timeWords(from, now)}.`;
  const about = isEstimate(fit, "ready_from_at") ? "about " : "";
  return ` Can be sold from ${about}${timeWords(from, now)}.`;
};

export const workingWords = (served: Served, now: string): string => {
  const { vented } = served.serving;
  if (vented === null) return "";
  const spile = spileWords(vented);
  return `Vented ${agoWords(vented.since, now)}${spile === "" ? "" : `, ${spile}`}.${earlyWords(served.ready, now)}${soldWords(served, now)}`;
};

export const waitingWords = (served: Served, now: string): string =>
  `On the stillage since ${timeWords(served.serving.stillaged?.since ?? now, now)}, not vented yet.${earlyWords(served.ready, now)}${soldWords(served, now)}`;

/** Put up before its time is common, and then it is good to know until when. */
const earlyWords = (ready: Served["ready"], now: string): string => {
  if (ready.stage === "past") return " Past its best before.";
  return ready.ready_at !== null && ready.ready_at > now
    ? ` Conditioning until ${timeWords(ready.ready_at, now)}.`
    : "";
};

export const barWords = (served: Served, known: Known): string => {
  if (served.serving.tapped !== null) return onSaleWords(served, known.now);
  return served.serving.vented !== null
    ? workingWords(served, known.now)
    : waitingWords(served, known.now);
};
