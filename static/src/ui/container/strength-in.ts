// The strength to expect of what is in a container, by what was noted with its fill, and whether the
// label may call it what it does.

import { CONTAINER_KINDS } from "../../domain/containers.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Contents } from "../../domain/standing.ts";
import { doseLines, type Racked } from "../bench/doses.ts";
import {
  type Added,
  addedBy,
  type Expected,
  expectedIn,
  expectedPct,
  labelledWords,
} from "../bench/expected.ts";
import { sentence } from "../words.ts";

interface Filled {
  beer: Racked["beer"];
  gyle: Racked["gyle"];
  /** Null for a cask that would be filled now, by the beer's recipe. */
  contents: Pick<Contents, "doses" | "volume_ml"> | null;
}

const FIRKIN_ML = CONTAINER_KINDS["firkin"]?.capacity_ml ?? 0;

const asFilledNow = ({ beer, gyle }: Filled, settings: Settings): Added[] | null => {
  const firkin = { kind: "firkin", volume_ml: FIRKIN_ML, count: 1, limit_millibar: null };
  return addedBy(doseLines({ beer, gyle, sizes: [firkin], settings }));
};

/** Null where the gyle was not measured, or where what goes in is not known yet. */
export const strengthIn = (filled: Filled, settings: Settings): Expected | null => {
  const { beer, gyle, contents } = filled;
  const added = contents?.doses ?? asFilledNow(filled, settings);
  if (added === null) return null;
  const expected = expectedIn({ beer, gyle, settings }, added, contents?.volume_ml ?? FIRKIN_ML);
  return expected.worked === null ? null : expected;
};

/** "4.24 % vol to expect in the cask. 4.2 % on the label is within the 0.5 % that the law allows." */
export const strengthInWords = (expected: Expected, labelTenths: number | undefined): string => {
  const { says } = labelledWords(expected, labelTenths);
  const first = `${expectedPct(expected)} % vol to expect after the second fermentation`;
  return says === "" ? `${first}.` : `${first}. ${sentence(says)}.`;
};
