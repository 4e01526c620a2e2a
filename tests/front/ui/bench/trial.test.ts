// A finings trial: the ladder, what is pipetted, readings and when they decide, the beer's rates.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Trial, TrialFields, TrialSample } from "../../../../static/src/domain/records.ts";
import {
  auxiliaryIn,
  doseWords,
  durationWords,
  nextOf,
  type Readings,
  readingsFault,
  readWords,
  stepWords,
  whenWords,
  withoutLast,
  withReadings,
} from "../../../../static/src/ui/bench/trial/jars.ts";
import { trialSays, trialsOf, trialTitle } from "../../../../static/src/ui/bench/trial/list.ts";
import {
  areRatesOf,
  proposalWords,
  ratesOf,
} from "../../../../static/src/ui/bench/trial/proposal.ts";
import { readSetUp, stepsOf, usualSetUp } from "../../../../static/src/ui/bench/trial/set-up.ts";
import { ago, known, NOW } from "../brewery.ts";

const jar = (isinglass: number, auxiliary: number, more: Partial<TrialSample> = {}) => ({
  isinglass_centipt: isinglass * 100,
  auxiliary_centipt: auxiliary * 100,
  clarity: [],
  resettled_tenths: [],
  sediment_ul: null,
  ...more,
});

const trial = (samples: TrialSample[], more: Partial<TrialFields> = {}): Trial => ({
  fields: { gyle: "g318", sample_ml: 500, samples, ...more },
  set_by: {},
});

/** Read bright, or not, 4 h 30 min after the finings and after two shakings. */
const read = (isinglass: number, score: number, resettled = score) =>
  jar(isinglass, 0.5, {
    clarity: [{ after_min: 270, score_tenths: score * 10 }],
    resettled_tenths: [resettled * 10, resettled * 10],
  });

test("steps are typed with blanks or commas between, in any order", () => {
  assert.deepEqual(stepsOf("4 2  3"), [2, 3, 4]);
  assert.deepEqual(stepsOf("0, 0.25, 0,5; 0.25"), [0, 0.25, 0.5]);
  assert.deepEqual([stepsOf(""), stepsOf("two"), stepsOf("-1")], [null, null, null]);
});

test("the usual ladder is twenty jars, and says that some doses are small", () => {
  const { samples, worked, fault } = readSetUp(usualSetUp({}), false, {});
  assert.equal(fault, null);
  assert.equal(samples.length, 20);
  assert.deepEqual(samples[1], jar(2, 0.25));
  assert.ok(worked?.cautions.includes("trial_doses_too_small"));
});

test("the brewery's own sample stands in the form", () => {
  assert.equal(usualSetUp({ trial_sample_ml: 1000 }).sampleMl, "1000");
});

test("what cannot be is refused with its reason", () => {
  const typed = { sampleMl: "500", isinglass: "2 3", auxiliary: "0" };
  const fault = (more: object, vegan = false) =>
    readSetUp({ ...typed, ...more }, vegan, {}).fault ?? "";
  assert.match(fault({ isinglass: "many" }), /Steps of isinglass/);
  assert.match(fault({ sampleMl: "20" }), /^The sample: from 50 to 5000 mL/);
  assert.match(fault({ sampleMl: "" }), /^The sample/);
  assert.match(fault({ isinglass: "11" }), /^Isinglass: from 0 to 10 pints per barrel/);
  assert.match(fault({}, true), /vegan/);
  assert.equal(fault({ isinglass: "0", auxiliary: "1" }, true), "");
  const many = Array.from({ length: 20 }, (_, n) => n / 4).join(" ");
  assert.match(fault({ isinglass: many, auxiliary: many }), /At most 200 jars/);
});

test("a jar says what to pipette: a pint a barrel is 1.736 mL in 500 mL", () => {
  assert.equal(doseWords(jar(2, 0.5), 500), "0.87 mL auxiliary, then 3.47 mL isinglass");
  assert.equal(doseWords(jar(1, 0), 500), "1.74 mL isinglass");
  assert.equal(doseWords(jar(0, 0), 500), "nothing, to compare with");
  assert.equal(stepWords(jar(2, 0.5)), "isinglass 2 pt, auxiliary 0.5 pt");
});

test("auxiliary goes in first, and after alginate isinglass waits four hours", () => {
  const jars = [jar(2, 0.5)];
  const fields = { auxiliary: "auxiliary_alginate" as const };
  assert.deepEqual(nextOf(trial(jars, fields), known), { is: "auxiliary" });
  const waiting = nextOf(trial(jars, { ...fields, auxiliary_at: ago(0, 1) }), known);
  assert.match(waiting.is === "isinglass" ? (waiting.cannot ?? "") : "", /15:01/);
  const free = { is: "isinglass", cannot: null };
  assert.deepEqual(nextOf(trial(jars, { ...fields, auxiliary_at: ago(0, 4) }), known), free);
  const silica = { auxiliary: "auxiliary_silica" as const, auxiliary_at: NOW };
  assert.deepEqual(nextOf(trial(jars, silica), known), free);
  assert.deepEqual(nextOf(trial([jar(2, 0)]), known), free);
  assert.deepEqual(nextOf(trial(jars, { started_at: NOW }), known), { is: "reading" });
});

test("with no isinglass at all the time counts from the auxiliary", () => {
  assert.deepEqual(auxiliaryIn(trial([jar(2, 1)]), NOW), { auxiliary_at: NOW });
  assert.deepEqual(auxiliaryIn(trial([jar(0, 1)]), NOW), { auxiliary_at: NOW, started_at: NOW });
});

test("it is told which readings decide: 4 to 5 hours after", () => {
  const deciding = (hours: number) => whenWords(ago(0, hours), NOW)[1];
  assert.equal(deciding(1), "What is read from 15:00 to 16:00 decides.");
  assert.equal(deciding(4), "What is read now, until 13:00, decides.");
  assert.equal(deciding(5), "What is read now, until 12:00, decides.");
  assert.equal(deciding(6), "What was read from 10:00 to 11:00 decides.");
  assert.match(whenWords(ago(20), NOW)[0], /5 Nov/);
});

test("readings are added to those before, and what was not read stays", () => {
  const before = trial([read(2, 3), read(3, 4)], { started_at: ago(1) });
  const readings: Readings = {
    1: { clarity: { after_min: 1440, score: 5 }, resettled: 4, sediment: "12,5" },
  };
  const [first, second] = withReadings(before, readings);
  assert.deepEqual(first, read(2, 3));
  assert.equal(
    readWords(second as TrialSample),
    "4 h 30 min: 4; 24 h: 5; shaken: 4, 4, 4; 12.5 mL settled",
  );
  assert.equal(durationWords(45), "45 min");
});

test("sediment that cannot be names its jar, and a reading can be taken back", () => {
  const one = trial([jar(1, 0), read(2, 3)], { started_at: ago(1) });
  assert.match(readingsFault(one, { 1: { sediment: "a bit" } }) ?? "", /^Jar 2: .*0 to 500 mL/);
  assert.match(readingsFault(one, { 0: { sediment: "501" } }) ?? "", /^Jar 1/);
  assert.equal(readingsFault(one, { 0: { sediment: "0" } }), null);
  const full = jar(1, 0, { resettled_tenths: Array.from({ length: 50 }, () => 40) });
  assert.match(readingsFault(trial([full]), { 0: { resettled: 4 } }) ?? "", /50 readings/);
  assert.equal(withoutLast(one, 0), null);
  assert.deepEqual(withoutLast(one, 1)?.[1]?.resettled_tenths, [30]);
});

test("the lowest bright dose with all above it bright is proposed, with the reason", () => {
  const proposal = proposalWords(trial([read(1, 2), read(2, 4, 3), read(3, 4), read(4, 5)]), {});
  assert.equal(proposal?.says, "3 pt of isinglass and 0.5 pt of auxiliary a barrel");
  assert.deepEqual(proposal?.why.slice(0, 2), [
    "Isinglass 1042 mL/hL, 426 mL in a firkin. Auxiliary 174 mL/hL, 71 mL in a firkin.",
    "The lowest dose that was bright (4 or better) 4 to 5 h after and after every shaking, as was every jar with more isinglass. 2 jars are on that plateau.",
  ]);
});

test("a dose bright between two that are not was luck", () => {
  assert.equal(
    proposalWords(trial([read(2, 5), read(3, 3), read(4, 5)]), {})?.dose?.isinglass_pt,
    4,
  );
});

test("where nothing is proposed it says what lacks", () => {
  const why = (samples: TrialSample[]) => proposalWords(trial(samples), {})?.why[0] ?? "";
  const early = { clarity: [{ after_min: 60, score_tenths: 50 }] };
  assert.match(why([jar(2, 0, early)]), /Nothing was read 4 to 5 h after/);
  const inTime = { clarity: [{ after_min: 240, score_tenths: 50 }] };
  assert.match(why([jar(2, 0, inTime)]), /shaken/);
  assert.match(why([read(2, 3)]), /No dose was bright in time/);
});

test("a jar read ten days on is judged all the same", () => {
  const late = read(3, 5);
  late.clarity.push({ after_min: 20_000, score_tenths: 50 });
  assert.notEqual(proposalWords(trial([late]), {})?.dose, null);
});

test("the beer's rates are set in the ledger's units, and none of auxiliary takes it away", () => {
  const tried = trial([], { auxiliary: "auxiliary_silica" });
  const dose = { isinglass_pt: 3, auxiliary_pt: 0.5, settled_ml: null };
  const rates = ratesOf(dose, tried);
  assert.deepEqual(rates, {
    isinglass_ml_per_hl: 1042,
    auxiliary_ml_per_hl: 174,
    auxiliary: "auxiliary_silica",
  });
  assert.equal(areRatesOf(rates, rates), true);
  assert.equal(areRatesOf({ ...rates, isinglass_ml_per_hl: 850 }, rates), false);
  const without = ratesOf({ ...dose, auxiliary_pt: 0 }, tried);
  assert.deepEqual([without.auxiliary, without.auxiliary_ml_per_hl], ["none", 0]);
});

test("a beer's trials stand with the last first, and say what came of them", () => {
  const trials = new Map([
    ["a", trial([read(3, 5)], { started_at: ago(20) })],
    ["b", trial([jar(2, 0)])],
    ["c", trial([jar(2, 0)], { started_at: ago(1) })],
    ["other", trial([], { gyle: "g319" })],
  ]);
  const listed = trialsOf(trials, "b1", known);
  assert.deepEqual(
    listed.map(([id]) => id),
    ["b", "c", "a"],
  );
  assert.deepEqual(
    listed.map(([, one]) => trialSays(one, known, {})),
    [
      "1 jar, to be dosed",
      "1 jar, to be read",
      "3 pt of isinglass and 0.5 pt of auxiliary a barrel",
    ],
  );
  assert.match(trialTitle(trials.get("a") as Trial, known), /^Gyle 318, .*5 Nov/);
});
