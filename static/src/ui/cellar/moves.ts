// How often a fined cask may still be moved, in words.

import { movesAfterFining } from "../../domain/bench/finings-lots.ts";
import type { Settings } from "../../domain/figures.ts";
import { RANGES } from "../../domain/inputs.ts";
import type { Standing } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";
import { count } from "../words.ts";

/** By the rule; null while no isinglass is noted in it. */
export const movesLeft = ({ contents }: Standing, own: Settings) => {
  const fined = contents?.doses.filter(({ what }) => what === "isinglass").at(-1);
  if (!contents || fined === undefined) return null;
  const moves = Math.min(RANGES.moves.high, Math.max(0, contents.moves - fined.moves));
  const worked = attempt(() => movesAfterFining({ moves }, own));
  return worked && { moves, worked };
};

const often = (n: number): string =>
  n === 0 ? "not moved since" : n === 1 ? "moved once since" : `moved ${n} times since`;

/** "Fined, moved twice since: 1 more move is trusted."; "" where it was not fined. */
export const movesWords = (
  standing: Standing,
  own: Settings,
): { says: string; tone: "look" | "" } => {
  const found = movesLeft(standing, own);
  if (found === null) return { says: "", tone: "" };
  const { moves_left, too_many } = found.worked.result;
  const since = `Fined, ${often(found.moves)}`;
  if (too_many) return { says: `${since}: more than it is trusted to settle after.`, tone: "look" };
  return moves_left === 0
    ? { says: `${since}: one more may be too many for it to settle.`, tone: "look" }
    : { says: `${since}: trusted to settle after ${count(moves_left, "more move")}.`, tone: "" };
};
