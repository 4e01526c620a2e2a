// The sentences about a cask that will run out and about the next one of its beer.

import type { Planned } from "../../domain/cellar/plan.ts";
import { JOB_WORDS } from "../cellar/plan.ts";
import { timeWords } from "../words.ts";
import type { Ending } from "./run-out.ts";

export const runsOutWords = ({ worked }: Ending, now: string): string => {
  const { soonest_at: soonest, gone_at: gone } = worked.result;
  if (soonest === null) return "";
  const short = worked.cautions.includes("pace_from_short_span");
  const nights = worked.cautions.includes("every_hour_counts") ? ", nights counted too" : "";
  const pace = short ? `by the pace of a few hours only${nights}` : `at this pace${nights}`;
  if (soonest <= now) return "At the pace of its last dips it is empty now. Dip it.";
  return gone === soonest
    ? `Runs out about ${timeWords(soonest, now)} ${pace}.`
    : `Would run out about ${timeWords(soonest, now)} ${pace}: it has to be off before that.`;
};

const byWords = (by: string, now: string): string =>
  by < now ? "at once" : `by ${timeWords(by, now)}`;

const jobsWords = ({ number, jobs }: Planned, now: string): string => {
  const vent = jobs.find(({ step }) => step === "vent");
  const up = jobs.find(({ step }) => step === "stillage");
  if (vent !== undefined) {
    const first = up === undefined ? "" : `, on the stillage ${byWords(up.by_at, now)}`;
    return `Vent the next one, ${number}, ${byWords(vent.by_at, now)}${first}.`;
  }
  const [first] = jobs;
  if (first === undefined) return `The next one, ${number}, has all done to it.`;
  return `The next one is ${number}: ${JOB_WORDS[first.step].says} ${byWords(first.by_at, now)}.`;
};

/** "Vent the next one, 118, by Thu 12:00." Late, it says from when that one can be sold. */
export const nextWords = ({ worked, next }: Ending, now: string, keg: boolean): string => {
  const { next: steps } = worked.result;
  if (keg || steps === null) return "";
  if (next === null) {
    return `The next one would have to be vented ${byWords(steps.vent_by_at, now)}, and none of it is left in the cellar.`;
  }
  const says = jobsWords(next, now);
  return next.can
    ? says
    : `${says} It can be sold from ${timeWords(next.ready_from_at, now)} only.`;
};
