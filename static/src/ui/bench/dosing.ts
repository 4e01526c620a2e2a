// All that the bench needs for doses, in one piece that is fetched after the pad has come up.

import { CAUTIONS } from "../../domain/cautions.ts";
import type { Facts } from "../../domain/entries.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { beerDoc, type Known, timeWords } from "../words.ts";
import { doseFacts } from "./dose-facts.ts";
import { type DoseLine, doseLines, isinglassLine, loudCautions } from "./doses.ts";
import { whyNotFined } from "./fining.ts";
import type { LotsInUse } from "./lots.ts";

export { DoseStrip } from "./DoseStrip.tsx";
export { usedLots } from "./lots-used.ts";

/** Which doses go in with the fill: those not switched off. */
export type Given = Readonly<Record<string, boolean>>;

export const isGiven = (given: Given, line: DoseLine): boolean => given[line.what] ?? true;

const racked = (
  known: Known,
  gyle: string,
  volumeMl: number,
  s: Standing | null,
  own: Settings,
) => {
  const beer = beerDoc(known, gyle);
  if (beer === null || volumeMl <= 0) return null;
  return {
    beer: beer.fields,
    gyle: known.gyles.get(gyle)?.fields ?? {},
    containers: [{ volume_ml: volumeMl, count: 1 }],
    limitBar: s?.limit_millibar == null ? null : s.limit_millibar / 1000,
    settings: own,
  };
};

/** The doses for one container that is to be filled. */
export const linesFor = (
  known: Known,
  gyle: string,
  volumeMl: number,
  standing: Standing | null,
  own: Settings,
): DoseLine[] => {
  const asked = racked(known, gyle, volumeMl, standing, own);
  return asked === null ? [] : doseLines(asked);
};

/** What goes in with the fill and is known; a dose of nothing is no dose. */
export const givenFacts = (lines: readonly DoseLine[], given: Given, lots: LotsInUse): Facts[] =>
  lines
    .filter((line) => !line.later && isGiven(given, line) && (line.each?.[0] ?? 0) > 0)
    .map((line) => doseFacts(line, lots));

/** The isinglass for a container that is full. */
export const finingLine = (known: Known, standing: Standing, own: Settings): DoseLine | null => {
  const { contents } = standing;
  if (contents === null) return null;
  const asked = racked(known, contents.gyle, contents.left_ml, standing, own);
  return asked === null ? null : isinglassLine(asked);
};

export const finingFacts = (
  known: Known,
  standing: Standing,
  own: Settings,
  lots: LotsInUse,
): Facts => {
  const line = finingLine(known, standing, own);
  return line === null ? { what: "isinglass" } : doseFacts(line, lots);
};

/** Why it cannot be fined now, in words; null when it can. */
export const finingRefusal = (
  known: Known,
  standing: Standing | null,
  own: Settings,
): string | null => {
  if (standing?.registered == null) return "It is not on record, so what is in it is not known.";
  const { number, contents } = standing;
  if (contents === null) return `${number} is down as empty: there is nothing to fine.`;
  const beer = beerDoc(known, contents.gyle);
  const why = whyNotFined(contents.doses, beer?.fields.vegan ?? false, known.now);
  if (why?.is === "vegan") return `${beer?.fields.name} is sold as vegan: no isinglass.`;
  if (why?.is === "wait") {
    return `${number} had alginate auxiliary: no isinglass until ${timeWords(why.until, known.now)}.`;
  }
  const line = finingLine(known, standing, own);
  if (line === null) return `${beer?.fields.name ?? "This beer"} has no rate of isinglass.`;
  if (line.missing) return `Not known for ${number}: ${line.missing.words.join(", ")}.`;
  return null;
};

/** The first caution that this racking has earned, and how many more there are. */
export const cautionLine = (lines: readonly DoseLine[]): string => {
  const [first, ...more] = loudCautions(lines);
  if (first === undefined) return "";
  const words = CAUTIONS[first].words.replace(/(?<=[.:]) .*$/s, "").replace(/:$/, ".");
  return more.length === 0 ? words : `${words} ${more.length} more.`;
};
