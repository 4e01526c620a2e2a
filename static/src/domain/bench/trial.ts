/** A finings trial: its samples, and what they speak for. Twin of cellarapp/domain/bench/trial.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { mlPerLFromPints } from "./units.ts";

const MOST_STEPS = 20;
const MOST_SAMPLES = 200;
const MOST_READINGS = 50;

/** Steps in pints per barrel, of both finings or of neither. */
export interface TrialLadderInputs {
  sample_ml: number;
  isinglass_steps?: number[] | null;
  auxiliary_steps?: number[] | null;
}

/** The steps of a ladder, or the usual ones where none are asked for. */
function askedSteps(
  work: Working,
  asked: Asked,
  product: "isinglass" | "auxiliary",
  field: "isinglass_pt" | "auxiliary_pt",
): number[] {
  if (!asked.has("isinglass_steps") && !asked.has("auxiliary_steps")) {
    return work.settingList(`trial_${product}_pt`);
  }
  return asked
    .parts(`${product}_steps`, MOST_STEPS, "steps")
    .map((step, index) =>
      new Asked({ [field]: step }, [field], `${product}_steps[${index}].`).number(field),
    );
}

/** TRIAL-1: millilitres of each finings for each sample of a ladder. */
export function trialLadder(inputs: TrialLadderInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["sample_ml", "isinglass_steps", "auxiliary_steps"]);
  const work = new Working(settings);
  const litres = asked.number("sample_ml") / 1000;
  const isinglass = askedSteps(work, asked, "isinglass", "isinglass_pt");
  const auxiliary = askedSteps(work, asked, "auxiliary", "auxiliary_pt");
  const each = work.step("1 pint per barrel in a sample", mlPerLFromPints(1) * litres, "mL", 3);
  const smallest = work.setting("trial_smallest_ml");
  const tooSmall = (step: number) => {
    const ml = halfUp(step * each, 6);
    return ml > 0 && ml < smallest;
  };
  if ([...isinglass, ...auxiliary].some(tooSmall)) work.caution("trial_doses_too_small");
  work.caution("trial_order");
  const samples = isinglass.flatMap((one) =>
    auxiliary.map((other) => ({
      isinglass_pt: halfUp(one, 3),
      auxiliary_pt: halfUp(other, 3),
      isinglass_ml: halfUp(one * each, 2),
      auxiliary_ml: halfUp(other * each, 2),
    })),
  );
  return work.done({ samples });
}

/** Clarity scored 1 to 5 at so many hours after isinglass, and after each resettling. */
export interface TrialSample {
  isinglass_pt: number;
  auxiliary_pt: number;
  clarity: { after_h: number; score: number }[];
  resettled: number[];
  settled_ml?: number | null;
}

interface Sample {
  isinglassPt: number;
  auxiliaryPt: number;
  bright: boolean;
  settledMl: number | null;
}

/** One sample's readings. It is bright if it was in time and after every resettling. */
function askedSample(work: Working, row: unknown, at: string): Sample {
  const names = ["isinglass_pt", "auxiliary_pt", "clarity", "resettled", "settled_ml"];
  const part = new Asked(row, names, at);
  const brightFrom = work.setting("trial_bright_score");
  const afterH = work.figure("trial_read_after_h");
  const inTime: number[] = [];
  part.parts("clarity", MOST_READINGS, "readings").forEach((reading, index) => {
    const read = new Asked(reading, ["after_h", "score"], `${at}clarity[${index}].`);
    const hours = read.number("after_h");
    const score = read.number("score");
    if (afterH.low <= hours && hours <= afterH.high) inTime.push(score);
  });
  const resettled = part
    .parts("resettled", MOST_READINGS, "readings")
    .map((score, index) =>
      new Asked({ score }, ["score"], `${at}resettled[${index}].`).number("score"),
    );
  const read = inTime.length > 0 && resettled.length > 0;
  return {
    isinglassPt: part.number("isinglass_pt"),
    auxiliaryPt: part.number("auxiliary_pt"),
    bright: read && Math.min(...inTime, ...resettled) >= brightFrom,
    settledMl: part.has("settled_ml") ? halfUp(part.number("settled_ml"), 1) : null,
  };
}

/** Bright, and so is every sample with more isinglass and the same auxiliary: not by luck. */
function onPlateau(sample: Sample, samples: readonly Sample[]): boolean {
  return samples
    .filter(
      (other) =>
        other.auxiliaryPt === sample.auxiliaryPt && other.isinglassPt >= sample.isinglassPt,
    )
    .every((other) => other.bright);
}

const isLower = (one: Sample, other: Sample): boolean =>
  one.isinglassPt < other.isinglassPt ||
  (one.isinglassPt === other.isinglassPt && one.auxiliaryPt < other.auxiliaryPt);

/** TRIAL-2: the lowest dose on the plateau: least isinglass, then least auxiliary. */
export function trialProposal(
  inputs: { samples: TrialSample[] },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["samples"]);
  const work = new Working(settings);
  const samples = asked
    .parts("samples", MOST_SAMPLES, "samples")
    .map((row, index) => askedSample(work, row, `samples[${index}].`));
  const plateau = samples.filter((sample) => onPlateau(sample, samples));
  work.step("Samples on the plateau", plateau.length, "samples", 0);
  work.caution(plateau.length > 0 ? "trial_confirm_in_cask" : "trial_no_plateau");
  const lowest = plateau.reduce<Sample | null>(
    (least, sample) => (least === null || isLower(sample, least) ? sample : least),
    null,
  );
  if (lowest?.isinglassPt === Math.max(...samples.map((sample) => sample.isinglassPt))) {
    work.caution("trial_top_of_ladder");
  }
  const proposal = lowest && {
    isinglass_pt: halfUp(lowest.isinglassPt, 3),
    auxiliary_pt: halfUp(lowest.auxiliaryPt, 3),
    settled_ml: lowest.settledMl,
  };
  return work.done({ proposal, on_plateau: plateau.length });
}
