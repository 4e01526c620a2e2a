// What is noted of doses: those of a fill, and the isinglass of a container that is full.

import type { Facts } from "../../domain/entries.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Trial } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { beerDoc, type Known, timeWords } from "../words.ts";
import { doseFacts } from "./dose-facts.ts";
import type { DoseLine, Racked } from "./dose-line.ts";
import { doseLines, isinglassLine } from "./doses.ts";
import { finingNow, whyNotFined } from "./fining.ts";
import { amountGiven, type Instead } from "./instead.ts";
import type { LotsInUse } from "./lots.ts";
import { sizesOf, type ToFill } from "./sizes.ts";
import { behindRates } from "./trial/lots-tried.ts";
import { usualPh } from "./usual-ph.ts";

/** The lots that go in, and the trials that may have set the rates. */
export interface Using {
  lots: LotsInUse;
  trials?: ReadonlyMap<string, Trial>;
}

/** Containers about to be filled from a gyle; null where its beer or what they take is not known. */
export const rackedFor = (
  known: Known,
  gyle: string,
  all: readonly ToFill[],
  settings: Settings,
  { lots, trials = new Map() }: Using,
): Racked | null => {
  const beer = beerDoc(known, gyle);
  const sizes = sizesOf(all);
  if (beer === null || sizes.length === 0) return null;
  const fields = known.gyles.get(gyle)?.fields ?? {};
  return {
    beer: beer.fields,
    gyle: fields,
    sizes,
    usualPh: usualPh(known, gyle),
    settings,
    lots: known.lots,
    next: lots,
    tried: behindRates(trials, known.gyles.get(gyle)?.fields.beer ?? "", known, settings),
  };
};

/** What a person or the lots in use say of doses, beyond what is worked out. */
interface Noted {
  instead: Instead;
  lots: LotsInUse;
}

/** What goes in with the fill of one container and is known; a dose of nothing is no dose. */
export const fillDoses = (
  known: Known,
  gyle: string,
  one: ToFill,
  own: Settings,
  { instead, lots }: Noted,
): Facts[] => {
  const racked = rackedFor(known, gyle, [one], own, { lots });
  return (racked === null ? [] : doseLines(racked)).flatMap((line) => {
    const amount = amountGiven(instead, line, 0) ?? 0;
    return line.later || amount === 0 ? [] : [doseFacts(line, amount, lots)];
  });
};

/** The isinglass for a container that is full. */
export const finingLine = (
  known: Known,
  standing: Standing,
  own: Settings,
  using: Using,
): DoseLine | null => {
  const { contents, kind } = standing;
  if (contents === null) return null;
  const full = { kind, volume_ml: contents.left_ml, limit_millibar: null };
  const racked = rackedFor(known, contents.gyle, [full], own, using);
  const line = racked && isinglassLine({ ...racked, wentIn: contents });
  if (line === null || line.each === null) return line;
  // What it has had before matters: beer is fined a second time with less.
  const order = finingNow(contents.doses, racked?.beer.vegan ?? false, known.now);
  return { ...line, worked: [...line.worked, order] };
};

export const finingFacts = (
  known: Known,
  standing: Standing,
  own: Settings,
  { instead, lots }: Noted,
): Facts => {
  const line = finingLine(known, standing, own, { lots });
  const amount = line && amountGiven(instead, line, 0);
  return line === null || amount === null ? { what: "isinglass" } : doseFacts(line, amount, lots);
};

/** Why it cannot be fined now, in words; null when it can. */
export const finingRefusal = (
  known: Known,
  standing: Standing | null,
  own: Settings,
  instead: Instead,
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
  const line = finingLine(known, standing, own, { lots: {} });
  if (line === null) return `${beer?.fields.name ?? "This beer"} has no rate of isinglass.`;
  const amount = amountGiven(instead, line, 0);
  if (amount === 0) return `None is down as given to ${number}: tap the dose and say how much.`;
  if (amount === null) return `Not known for ${number}: ${line.missing?.words.join(", ")}.`;
  return null;
};
