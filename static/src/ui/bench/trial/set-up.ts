// Setting a finings trial up: what was typed, and the jars that come of it.

import { trialLadder } from "../../../domain/bench/trial.ts";
import { CAUTIONS } from "../../../domain/cautions.ts";
import { DomainError } from "../../../domain/errors.ts";
import { type Settings, setting, settingList } from "../../../domain/figures.ts";
import type { TrialSample } from "../../../domain/record-fields.ts";
import { halfUpWhole } from "../../../domain/rounding.ts";
import { count, litres } from "../../words.ts";

export interface Typed {
  sampleMl: string;
  isinglass: string;
  auxiliary: string;
}

/** As many as the brewery's server takes. */
const MOST_JARS = 200;
const STEP = /^\d{1,2}(\.\d{1,2})?$/;

/** The ladder and the sample as this brewery takes them. */
export const usualSetUp = (own: Settings): Typed => {
  return {
    sampleMl: String(setting("trial_sample_ml", own)),
    isinglass: settingList("trial_isinglass_pt", own).join(" "),
    auxiliary: settingList("trial_auxiliary_pt", own).join(" "),
  };
};

/** "2 3 4.5" as figures, the least first, each once; null where one of them is none. */
export const stepsOf = (text: string): number[] | null => {
  const parts = text.split(/[\s;]+|,\s+/).filter(Boolean);
  const steps = parts.map((part) => part.replace(",", "."));
  if (steps.length === 0 || !steps.every((step) => STEP.test(step))) return null;
  return [...new Set(steps.map(Number))].sort((a, b) => a - b);
};

const LABELS: { [field: string]: string } = {
  sample_ml: "The sample",
  isinglass_pt: "Isinglass",
  auxiliary_pt: "Auxiliary",
};

const refusal = ({ facts }: DomainError): string => {
  const field = String(facts.field).replace(/^.*\./, "");
  return `${LABELS[field] ?? "A figure"}: from ${facts.low} to ${facts.high} ${facts.unit}.`;
};

const centi = (pints: number): number => halfUpWhole(pints * 100);

/** The jars and how they are dosed, or what is wrong in words. */
export const readSetUp = (typed: Typed, vegan: boolean, own: Settings) => {
  const nothing = { worked: null, samples: [] as TrialSample[], sampleMl: 0 };
  const isinglass = stepsOf(typed.isinglass);
  const auxiliary = stepsOf(typed.auxiliary);
  const sampleMl = Number(/^\d{1,5}$/.test(typed.sampleMl.trim()) ? typed.sampleMl : Number.NaN);
  if (isinglass === null) return { ...nothing, fault: "Steps of isinglass, such as 2 3 4 5." };
  if (auxiliary === null) return { ...nothing, fault: "Steps of auxiliary, such as 0 0.5 1." };
  if (vegan && isinglass.some((step) => step > 0)) {
    return { ...nothing, fault: "Sold as vegan: no isinglass. Put 0 for it." };
  }
  if (isinglass.length * auxiliary.length > MOST_JARS) {
    return { ...nothing, fault: `At most ${MOST_JARS} jars: leave some steps out.` };
  }
  try {
    const asked = {
      sample_ml: sampleMl,
      isinglass_steps: isinglass,
      auxiliary_steps: auxiliary,
    };
    const worked = trialLadder(asked, own);
    const samples = worked.result.samples.map((row) => ({
      isinglass_centipt: centi(row.isinglass_pt),
      auxiliary_centipt: centi(row.auxiliary_pt),
    }));
    return { worked, samples, sampleMl, fault: null };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    return { ...nothing, fault: refusal(fault) };
  }
};

/** "20 jars take 10 L of beer." */
export const jarsWords = (samples: readonly TrialSample[], sampleMl: number): string =>
  `${count(samples.length, "jar")} ${samples.length === 1 ? "takes" : "take"} ${litres(samples.length * sampleMl)} of beer.`;

/** The caution that a jar is too small to be dosed well. */
export const tooSmall = (worked: ReturnType<typeof trialLadder>): string =>
  worked.cautions.includes("trial_doses_too_small") ? CAUTIONS.trial_doses_too_small.words : "";
