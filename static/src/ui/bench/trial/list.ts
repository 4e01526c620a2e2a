// The trials of one beer, and how far each has come.

import type { Settings } from "../../../domain/figures.ts";
import type { Trial } from "../../../domain/records.ts";
import { count, gyleName, type Known, sentence, timeWords } from "../../words.ts";
import { nextOf, samplesOf } from "./jars.ts";
import { proposalWords } from "./proposal.ts";

const startOf = ({ fields }: Trial): string => fields.started_at ?? fields.auxiliary_at ?? "";

/** Those still to be dosed first, then the last started; ids are made in the order of time. */
export const trialsOf = (
  trials: ReadonlyMap<string, Trial>,
  beer: string,
  known: Known,
): [string, Trial][] =>
  [...trials]
    .filter(
      ([, { fields }]) =>
        !fields.retired && known.gyles.get(fields.gyle ?? "")?.fields.beer === beer,
    )
    .sort(([a, one], [b, other]) => {
      const [started, before] = [startOf(one) || "~", startOf(other) || "~"];
      return started === before ? (a < b ? 1 : -1) : started < before ? 1 : -1;
    });

/** "Gyle 318, 4 Nov 11:30" */
export const trialTitle = (trial: Trial, known: Known): string => {
  const started = startOf(trial);
  const gyle = sentence(gyleName(known, trial.fields.gyle ?? ""));
  return started === "" ? gyle : `${gyle}, ${timeWords(started, known.now)}`;
};

/** What has come of it, or what comes next. */
export const trialSays = (trial: Trial, known: Known, own: Settings): string => {
  const jars = count(samplesOf(trial).length, "jar");
  if (nextOf(trial, known).is !== "reading") return `${jars}, to be dosed`;
  const proposal = proposalWords(trial, own);
  return proposal?.dose ? proposal.says : `${jars}, to be read`;
};
