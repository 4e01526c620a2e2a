// What is said of a kind of container: where they stand, how long a turn takes, how many it needs.

import type { fleetNeeded } from "../../../domain/fleet/needed.ts";
import { pounds } from "../../words/money.ts";
import { count } from "../../words.ts";
import type { Fleet } from "./fleet.ts";

type Needed = ReturnType<typeof fleetNeeded>["result"];

/** "20 full and 62 empty at the brewery, 38 out, 1 missing.": each stands once, so it adds up. */
export const standsWords = ({ full, empty, out, aside, missing }: Fleet): string => {
  const others = [
    `${out.length} out`,
    ...(aside > 0 ? [`${aside} set aside`] : []),
    ...(missing > 0 ? [`${missing} missing`] : []),
  ].join(", ");
  return `${full} full and ${empty} empty at the brewery, ${others}.`;
};

/** Whether there are enough, and when there may not be. */
export const needWords = ({ needed, have, short_in_weeks: short, trips }: Needed): string => {
  if (trips === 0) return "No trip has ended yet, so nothing can be reckoned.";
  const enough =
    needed > have
      ? `Needed: ${needed}, ${needed - have} more than there are.`
      : `Needed: ${needed} of ${have}.`;
  return short === null ? enough : `${enough} Likely none left in ${count(short, "week")}.`;
};

/** "By what stands here and goes out in a week it is 30 days now (Little’s law)." */
export const standingWords = (days: number | null): string =>
  days === null
    ? ""
    : `By what stands here and goes out in a week it is ${count(days, "day")} now (Little’s law).`;

export const turnWords = (needed: Needed): string[] => {
  const { trips, median_days: median, mean_days: mean, turns_a_year: turns } = needed;
  if (trips === 0) return [];
  const half =
    median === null ? "Fewer than half come back." : `Half are back after ${count(median, "day")}.`;
  return [
    `${half} On average a trip takes ${mean} days, by ${count(trips, "return")}: somewhere from ${needed.mean_low_days} to ${needed.mean_high_days}.`,
    ...(turns === null
      ? []
      : [`${turns} turns a year each; ${needed.expected} in the round at a time.`]),
    needed.lost_pounds > 0
      ? `Gone missing within a year: ${pounds(needed.lost_pounds * 100)} to replace.`
      : "None has gone missing within a year.",
  ];
};
