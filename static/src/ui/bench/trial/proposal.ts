// What the readings of a trial speak for, in words with the reason, and the beer's rates from it.

import { trialProposal } from "../../../domain/bench/trial.ts";
import { mlPerLFromPints } from "../../../domain/bench/units.ts";
import { CAUTIONS } from "../../../domain/cautions.ts";
import { CONTAINER_KINDS } from "../../../domain/containers.ts";
import { figure, type Settings, setting } from "../../../domain/figures.ts";
import { RANGES } from "../../../domain/inputs.ts";
import type { BeerFields } from "../../../domain/record-fields.ts";
import type { Trial } from "../../../domain/records.ts";
import { halfUpWhole } from "../../../domain/rounding.ts";
import { attempt } from "../../attempt.ts";
import { count } from "../../words.ts";
import { jarsOf } from "./jars.ts";

/** By the rule; null where there is nothing that it could judge. */
export const proposalOf = (trial: Trial, own: Settings) => {
  const samples = jarsOf(trial).map((sample) => ({
    isinglass_pt: sample.isinglass_centipt / 100,
    auxiliary_pt: sample.auxiliary_centipt / 100,
    clarity: sample.clarity.map((read) => ({
      after_h: Math.min(RANGES.after_h.high, read.after_min / 60),
      score: read.score_tenths / 10,
    })),
    resettled: sample.resettled_tenths.map((score) => score / 10),
    settled_ml: sample.sediment_ul === null ? null : sample.sediment_ul / 1000,
  }));
  return samples.length === 0 ? null : attempt(() => trialProposal({ samples }, own));
};

type Worked = NonNullable<ReturnType<typeof proposalOf>>;
type Dose = NonNullable<Worked["result"]["proposal"]>;

/** A rate of the trade as the beer's record keeps it. */
const mlPerHl = (pints: number): number => halfUpWhole(mlPerLFromPints(pints) * 100);

/** Facts of the beer. With no auxiliary in the dose it gets none from now on. */
export type Rates = Partial<
  Pick<BeerFields, "isinglass_ml_per_hl" | "auxiliary_ml_per_hl" | "auxiliary">
>;

export const ratesOf = (dose: Dose, trial: Trial): Rates => {
  const { auxiliary } = trial.fields;
  return {
    isinglass_ml_per_hl: mlPerHl(dose.isinglass_pt),
    auxiliary_ml_per_hl: mlPerHl(dose.auxiliary_pt),
    ...(dose.auxiliary_pt === 0 ? { auxiliary: "none" as const } : auxiliary && { auxiliary }),
  };
};

export const areRatesOf = (beer: Partial<BeerFields>, rates: Rates): boolean =>
  (beer.isinglass_ml_per_hl ?? 0) === rates.isinglass_ml_per_hl &&
  (beer.auxiliary_ml_per_hl ?? 0) === rates.auxiliary_ml_per_hl &&
  (beer.auxiliary ?? "none") === (rates.auxiliary ?? beer.auxiliary ?? "none");

const FIRKIN_L = (CONTAINER_KINDS["firkin"]?.capacity_ml ?? 0) / 1000;

const amount = (pints: number, what: string): string => {
  const perL = mlPerLFromPints(pints);
  return `${what} ${halfUpWhole(perL * 100)} mL/hL, ${halfUpWhole(perL * FIRKIN_L)} mL in a firkin`;
};

/** "3 pt of isinglass and 0.25 pt of auxiliary a barrel" */
export const doseWords = ({ isinglass_pt, auxiliary_pt }: Dose): string =>
  `${isinglass_pt} pt of isinglass and ${auxiliary_pt === 0 ? "no auxiliary" : `${auxiliary_pt} pt of auxiliary`} a barrel`;

const whyNone = (trial: Trial): string => {
  const { low, high } = figure("trial_read_after_h");
  const samples = jarsOf(trial);
  const inTime = samples.some(({ clarity }) =>
    clarity.some(({ after_min }) => after_min >= low * 60 && after_min <= high * 60),
  );
  if (!inTime) return `Nothing was read ${low} to ${high} h after the finings, which decides.`;
  if (samples.every(({ resettled_tenths }) => resettled_tenths.length === 0)) {
    return "No jar was shaken and read again yet, which decides too.";
  }
  return CAUTIONS.trial_no_plateau.words;
};

export interface Proposal {
  worked: Worked;
  dose: Dose | null;
  /** What is proposed, or that nothing is. */
  says: string;
  why: string[];
}

export const proposalWords = (trial: Trial, own: Settings): Proposal | null => {
  const worked = proposalOf(trial, own);
  if (worked === null) return null;
  const { proposal: dose, on_plateau } = worked.result;
  if (dose === null) return { worked, dose, says: "No dose yet", why: [whyNone(trial)] };
  const { low, high } = figure("trial_read_after_h");
  const from = setting("trial_bright_score", own);
  const why = [
    [
      dose.isinglass_pt > 0 ? amount(dose.isinglass_pt, "Isinglass") : "",
      dose.auxiliary_pt > 0 ? amount(dose.auxiliary_pt, "Auxiliary") : "",
    ]
      .filter(Boolean)
      .map((words) => `${words}.`)
      .join(" "),
    `The lowest dose that was bright (${from} or better) ${low} to ${high} h after and after every shaking, as was every jar with more isinglass. ${count(on_plateau, "jar is", "jars are")} on that plateau.`,
    dose.settled_ml === null ? "" : `${dose.settled_ml} mL had settled in its jar.`,
    ...(["trial_top_of_ladder", "trial_confirm_in_cask"] as const)
      .filter((id) => worked.cautions.includes(id))
      .map((id) => CAUTIONS[id].words),
  ].filter(Boolean);
  return { worked, dose, says: doseWords(dose), why };
};
