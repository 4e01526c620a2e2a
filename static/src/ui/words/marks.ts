// Who said so, and since when.

import type { Mark } from "../../domain/standing.ts";
import type { Known } from "./known.ts";
import { timeWords } from "./time.ts";

/** "since Tue 09:40". */
export const sinceWords = (mark: Mark, known: Known): string =>
  `since ${timeWords(mark.since, known.now)}`;

/** "noted by Ann", or that nobody noted it and it follows from something else. */
export const byWords = (mark: Mark): string => {
  const who = mark.by === "" ? "someone" : mark.by;
  return mark.inferred ? `not noted itself: it follows from what ${who} noted` : `noted by ${who}`;
};

/** "since Tue 09:40, noted by Ann". */
export const markWords = (mark: Mark, known: Known): string =>
  `${sinceWords(mark, known)}, ${byWords(mark)}`;
