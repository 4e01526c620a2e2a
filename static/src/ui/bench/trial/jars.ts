// The jars of a trial: what goes into each, what was read of each, and when a reading counts.

import { trialLadder } from "../../../domain/bench/trial.ts";
import { figure } from "../../../domain/figures.ts";
import type { JarRead, TrialSample } from "../../../domain/record-fields.ts";
import type { Trial, TrialReading } from "../../../domain/records.ts";
import { attempt } from "../../attempt.ts";
import { clockWords, count, fullTimeWords, type Known, sentence, timeWords } from "../../words.ts";
import { whyNotFined } from "../fining.ts";

const MINUTE_MS = 60_000;

/** More readings of one jar are not kept at the brewery. */
const MOST_READINGS = 50;

export const samplesOf = ({ fields }: Trial): readonly TrialSample[] => fields.samples ?? [];

/** A jar with all that was read of it, in the order in which it was read. */
export interface Jar extends TrialSample {
  clarity: { after_min: number; score_tenths: number }[];
  resettled_tenths: number[];
  sediment_ul: number | null;
}

/** Those that count, the first first; what was taken back takes nothing back itself. */
export const readingsOf = ({ readings = [] }: Trial): TrialReading[] => {
  const out = new Set<string>();
  for (const { entry, instead_of } of [...readings].reverse()) {
    if (!out.has(entry)) for (const id of instead_of) out.add(id);
  }
  return readings.filter(({ entry, jars }) => jars.length > 0 && !out.has(entry));
};

const add = (jar: Jar, read: JarRead): void => {
  const { after_min, clarity_tenths, resettled_tenths, sediment_ul } = read;
  if (after_min !== undefined && clarity_tenths !== undefined) {
    jar.clarity.push({ after_min, score_tenths: clarity_tenths });
  }
  if (resettled_tenths !== undefined) jar.resettled_tenths.push(resettled_tenths);
  if (sediment_ul !== undefined) jar.sediment_ul = sediment_ul;
};

export const jarsOf = (trial: Trial): Jar[] => {
  const jars: Jar[] = samplesOf(trial).map((sample) => ({
    ...sample,
    clarity: [],
    resettled_tenths: [],
    sediment_ul: null,
  }));
  for (const read of readingsOf(trial).flatMap((reading) => reading.jars)) {
    const jar = jars[read.jar - 1];
    if (jar !== undefined) add(jar, read);
  }
  return jars;
};

const pints = (centipt: number): string => `${centipt / 100} pt`;

const has = (trial: Trial, product: "isinglass" | "auxiliary"): boolean =>
  samplesOf(trial).some((sample) => sample[`${product}_centipt`] > 0);

/** "isinglass 2 pt, auxiliary 0.5 pt": what the jar is tried with, for a barrel. */
export const stepWords = (sample: TrialSample): string => {
  const { isinglass_centipt: isinglass, auxiliary_centipt: auxiliary } = sample;
  const parts = [
    isinglass > 0 ? `isinglass ${pints(isinglass)}` : "",
    auxiliary > 0 ? `auxiliary ${pints(auxiliary)}` : "",
  ].filter(Boolean);
  return parts.length === 0 ? "nothing" : parts.join(", ");
};

/** Millilitres to pipette into one jar; null where the ledger holds what no jar can be. */
export const jarDose = (sample: TrialSample, sampleMl: number) =>
  attempt(
    () =>
      trialLadder({
        sample_ml: sampleMl,
        isinglass_steps: [sample.isinglass_centipt / 100],
        auxiliary_steps: [sample.auxiliary_centipt / 100],
      }).result.samples[0],
  ) ?? null;

/** "0.87 mL auxiliary, then 3.47 mL isinglass" */
export const doseWords = (sample: TrialSample, sampleMl: number): string => {
  const dose = jarDose(sample, sampleMl);
  if (dose === null) return "not known";
  const parts = [
    dose.auxiliary_ml > 0 ? `${dose.auxiliary_ml} mL auxiliary` : "",
    dose.isinglass_ml > 0 ? `${dose.isinglass_ml} mL isinglass` : "",
  ].filter(Boolean);
  return parts.length === 0 ? "nothing, to compare with" : parts.join(", then ");
};

/** What has to happen next before anything can be read. */
export type Next =
  | { is: "auxiliary" }
  | { is: "isinglass"; cannot: string | null }
  | { is: "reading" };

export const nextOf = (trial: Trial, known: Known): Next => {
  const { auxiliary, auxiliary_at, started_at } = trial.fields;
  if (started_at !== undefined) return { is: "reading" };
  if (has(trial, "auxiliary") && auxiliary_at === undefined) return { is: "auxiliary" };
  if (auxiliary === undefined || auxiliary_at === undefined) {
    return { is: "isinglass", cannot: null };
  }
  const why = whyNotFined([{ what: auxiliary, since: auxiliary_at }], false, known.now);
  const cannot =
    why?.is === "wait" ? `Alginate first: isinglass at ${timeWords(why.until, known.now)}.` : null;
  return { is: "isinglass", cannot };
};

/** The facts of the finings having gone in; without isinglass the time counts from the auxiliary. */
export const auxiliaryIn = (trial: Trial, now: string) =>
  has(trial, "isinglass") ? { auxiliary_at: now } : { auxiliary_at: now, started_at: now };

/** The time between which a reading decides. */
export const decidingTimes = (startedAt: string): { from: string; until: string } => {
  const { low, high } = figure("trial_read_after_h");
  const after = (hours: number) =>
    new Date(Date.parse(startedAt) + hours * 60 * MINUTE_MS).toISOString();
  return { from: after(low), until: after(high) };
};

/** Whole minutes since the finings went in. */
export const minutesSince = (startedAt: string, now: string): number =>
  Math.max(0, Math.floor((Date.parse(now) - Date.parse(startedAt)) / MINUTE_MS));

/** "45 min", "4 h", "4 h 20 min" */
export const durationWords = (minutes: number): string => {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
};

/** Longer ago than this the day says more than the hours. */
const HOURS_TOLD = 48;

/** When the finings went in, and which readings decide. */
export const whenWords = (startedAt: string, now: string): [since: string, deciding: string] => {
  const { from, until } = decidingTimes(startedAt);
  const minutes = minutesSince(startedAt, now);
  const since =
    minutes <= HOURS_TOLD * 60
      ? `The finings went in ${durationWords(minutes)} ago.`
      : `The finings went in ${fullTimeWords(startedAt, now)}.`;
  if (now < from) {
    return [since, `What is read from ${timeWords(from, now)} to ${clockWords(until)} decides.`];
  }
  return now <= until
    ? [since, `What is read now, until ${clockWords(until)}, decides.`]
    : [since, `What was read from ${clockWords(from)} to ${clockWords(until)} decides.`];
};

/** "1 h: 2, 4 h 20 min: 5, shaken: 4, 5, 12 mL settled" */
export const readWords = (jar: Jar): string => {
  const { clarity, resettled_tenths: resettled, sediment_ul: sediment } = jar;
  const parts = [
    ...clarity.map((read) => `${durationWords(read.after_min)}: ${read.score_tenths / 10}`),
    resettled.length === 0 ? "" : `shaken: ${resettled.map((score) => score / 10).join(", ")}`,
    sediment === null ? "" : `${sediment / 1000} mL settled`,
  ].filter(Boolean);
  return parts.length === 0 ? "not read yet" : parts.join("; ");
};

/** What is being read of the jars and not kept yet. */
export interface Readings {
  readonly [jar: number]: {
    readonly clarity?: { readonly after_min: number; readonly score: number };
    readonly resettled?: number;
    readonly sediment?: string;
  };
}

const SEDIMENT = /^\d{1,4}([.,]\d{1,3})?$/;

/** Why the readings cannot be kept as they stand, naming the jar; null when they can. */
export const readingsFault = (trial: Trial, readings: Readings): string | null => {
  for (const [n, jar] of jarsOf(trial).entries()) {
    const read = readings[n];
    const sediment = read?.sediment?.trim() ?? "";
    if (sediment !== "") {
      const most = trial.fields.sample_ml ?? 0;
      const ml = SEDIMENT.test(sediment) ? Number(sediment.replace(",", ".")) : Number.NaN;
      if (!(ml <= most)) return `Jar ${n + 1}: what settled is from 0 to ${most} mL.`;
    }
    const full = [jar.clarity, jar.resettled_tenths].some((list) => list.length >= MOST_READINGS);
    if (full && (read?.clarity !== undefined || read?.resettled !== undefined)) {
      return `Jar ${n + 1} has ${MOST_READINGS} readings: no more are kept.`;
    }
  }
  return null;
};

/** The readings as an entry carries them. */
export const jarsRead = (readings: Readings): JarRead[] =>
  Object.entries(readings).flatMap(([n, { clarity, resettled, sediment = "" }]) => {
    const settled = sediment.trim().replace(",", ".");
    const read = {
      ...(clarity && { after_min: clarity.after_min, clarity_tenths: clarity.score * 10 }),
      ...(resettled !== undefined && { resettled_tenths: resettled * 10 }),
      ...(settled !== "" && { sediment_ul: Math.floor(Number(settled) * 1000 + 0.5) }),
    };
    return Object.keys(read).length === 0 ? [] : [{ jar: Number(n) + 1, ...read }];
  });

const READ = {
  clarity_tenths: "clarity",
  resettled_tenths: "clarity after shaking",
  sediment_ul: "sediment",
} as const;

/** "Clarity of 5 jars, sediment of 2 jars" */
export const readingWords = ({ jars }: TrialReading): string => {
  const parts = (Object.keys(READ) as (keyof typeof READ)[]).flatMap((name) => {
    const read = jars.filter((jar) => jar[name] !== undefined).length;
    return read === 0 ? [] : [`${READ[name]} of ${count(read, "jar")}`];
  });
  return sentence(parts.join(", "));
};
