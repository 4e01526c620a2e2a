// Which lots a trial's finings came from, and whether the beer's rates were set with the lot in use.

import type { Settings } from "../../../domain/figures.ts";
import type { TrialFields, TrialSample } from "../../../domain/record-fields.ts";
import type { Trial } from "../../../domain/records.ts";
import type { Dose } from "../../../domain/standing.ts";
import { addedWords } from "../../words/entries.ts";
import { type Known, listWords, sentence } from "../../words.ts";
import type { Racked } from "../dose-line.ts";
import { type ChosenLots, type Lots, type LotsInUse, liveLots, NO_LOT } from "../lots.ts";
import { trialsOf } from "./list.ts";
import { areRatesOf, proposalWords, ratesOf } from "./proposal.ts";

type What = Dose["what"];

/** What of the finings in the jars comes from a lot, in the order in which it goes in. */
export const triedIn = (samples: readonly TrialSample[], auxiliary: What | ""): What[] => [
  ...(auxiliary !== "" && samples.some(({ auxiliary_centipt }) => auxiliary_centipt > 0)
    ? [auxiliary]
    : []),
  ...(samples.some(({ isinglass_centipt }) => isinglass_centipt > 0) ? ["isinglass" as const] : []),
];

/** As chosen for these jars while it is live, else the lot in use at the bench. */
export const chosenFor = (
  tried: readonly What[],
  lots: Lots,
  chosen: ChosenLots,
  used: LotsInUse,
): LotsInUse =>
  Object.fromEntries(
    tried.flatMap((what) => {
      const live = liveLots(lots, what).map(([id]) => id);
      const id = [chosen[what], used[what]].find(
        (one) => one === NO_LOT || live.includes(one ?? ""),
      );
      return id === undefined || id === NO_LOT ? [] : [[what, id]];
    }),
  );

/** The facts of a new trial: of each finings in its jars the lot that was chosen. */
export const lotFacts = (tried: readonly What[], chosen: LotsInUse): Partial<TrialFields> =>
  Object.fromEntries(
    tried.flatMap((what) =>
      chosen[what] === undefined
        ? []
        : [[what === "isinglass" ? "isinglass_lot" : "auxiliary_lot", chosen[what]]],
    ),
  );

const lotOf = ({ fields }: Trial, what: What): string | undefined =>
  what === "isinglass"
    ? fields.isinglass_lot
    : what === fields.auxiliary
      ? fields.auxiliary_lot
      : undefined;

const namesOf = (trials: readonly Trial[], what: What, lots: Lots): string[] => [
  ...new Set(trials.flatMap((trial) => lots.get(lotOf(trial, what) ?? "")?.fields.name ?? [])),
];

const FININGS: readonly What[] = ["auxiliary_alginate", "auxiliary_silica", "isinglass"];

/** "Isinglass lot F12", "auxiliary finings (silica) lot S4": where it is noted. */
export const lotsTried = (trials: readonly Trial[], lots: Lots): string =>
  sentence(
    listWords(
      FININGS.flatMap((what) => {
        const names = namesOf(trials, what, lots);
        return names.length === 0 ? [] : [`${addedWords(what)} lot ${listWords(names)}`];
      }),
    ),
  );

/** The trials that speak for a beer's rates as they stand now. */
export const behindRates = (
  trials: ReadonlyMap<string, Trial>,
  beer: string,
  known: Known,
  own: Settings,
): Trial[] => {
  const fields = known.beers.get(beer)?.fields ?? {};
  return trialsOf(trials, beer, known)
    .map(([, trial]) => trial)
    .filter((trial) => {
      const dose = proposalWords(trial, own)?.dose ?? null;
      return dose !== null && areRatesOf(fields, ratesOf(dose, trial));
    });
};

/** "The rate was set with lot F12, and this is lot F13: …"; "" where it was, or nobody noted which. */
export const otherLot = (
  { tried = [], next: chosen = {}, lots = new Map() }: Pick<Racked, "tried" | "next" | "lots">,
  what: What,
): string => {
  const next = chosen[what];
  const ids = tried.flatMap((trial) => lotOf(trial, what) ?? []);
  if (next === undefined || ids.length === 0 || ids.includes(next)) return "";
  const names = listWords(namesOf(tried, what, lots));
  const name = lots.get(next)?.fields.name;
  if (names === "" || name === undefined) return "";
  return `The rate was set with lot ${names}, and this is lot ${name}: a trial shows whether it holds.`;
};
