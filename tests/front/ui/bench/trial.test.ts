// A finings trial: the ladder, what is pipetted, readings and when they decide, the beer's rates.

import assert from "node:assert/strict";
import { test } from "node:test";
import type {
  JarRead,
  TrialFields,
  TrialSample,
} from "../../../../static/src/domain/record-fields.ts";
import type { Trial, TrialReading } from "../../../../static/src/domain/records.ts";
import {
  auxiliaryIn,
  doseWords,
  durationWords,
  jarsOf,
  jarsRead,
  nextOf,
  type Readings,
  readingsFault,
  readingsOf,
  readingWords,
  readWords,
  stepWords,
  whenWords,
} from "../../../../static/src/ui/bench/trial/jars.ts";
import { trialSays, trialsOf, trialTitle } from "../../../../static/src/ui/bench/trial/list.ts";
import {
  areRatesOf,
  proposalWords,
  ratesOf,
} from "../../../../static/src/ui/bench/trial/proposal.ts";
import { readSetUp, stepsOf, usualSetUp } from "../../../../static/src/ui/bench/trial/set-up.ts";
import { ago, known, NOW } from "../brewery.ts";

const jar = (isinglass: number, auxiliary: number): TrialSample => ({
  isinglass_centipt: isinglass * 100,
  auxiliary_centipt: auxiliary * 100,
});

const trial = (
  samples: TrialSample[],
  more: Partial<TrialFields> = {},
  ...read: (Omit<JarRead, "jar"> | null)[][]
): Trial => ({
  fields: { gyle: "g318", sample_ml: 500, samples, ...more },
  set_by: {},
  readings: read.map((jars, n) => ({
    since: ago(1),
    entry: `r${n}`,
    by: "Ann",
    inferred: false,
    key: `r${n}`,
    instead_of: [],
    jars: jars.flatMap((one, at) => (one === null ? [] : [{ jar: at + 1, ...one }])),
  })),
});

/** Jars of so many pints of isinglass that were read 4 h 30 min after, and after two shakings. */
const tried = (...jars: [isinglass: number, score: number, resettled?: number][]): Trial => {
  const resettled = jars.map(([, score, again = score]) => ({ resettled_tenths: again * 10 }));
  return trial(
    jars.map(([isinglass]) => jar(isinglass, 0.5)),
    {},
    jars.map(([, score]) => ({ after_min: 270, clarity_tenths: score * 10 })),
    resettled,
    resettled,
  );
};

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

test("the brewery's own sample and ladder stand in the form", () => {
  assert.equal(usualSetUp({ trial_sample_ml: 1000 }).sampleMl, "1000");
  const own = usualSetUp({ trial_isinglass_pt: [1, 1.5], trial_auxiliary_pt: [0] });
  assert.deepEqual([own.isinglass, own.auxiliary], ["1 1.5", "0"]);
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

test("readings are noted by jar, and what was not read is not", () => {
  const readings: Readings = {
    1: { clarity: { after_min: 1440, score: 5 }, resettled: 4, sediment: "12,5" },
    2: { sediment: " " },
  };
  assert.deepEqual(jarsRead(readings), [
    {
      jar: 2,
      after_min: 1440,
      clarity_tenths: 50,
      resettled_tenths: 40,
      sediment_ul: 12_500,
    },
  ]);
});

test("what was read on several phones stands together, in the order in which it was read", () => {
  const read = trial(
    [jar(1, 0), jar(2, 0)],
    {},
    [null, { after_min: 270, clarity_tenths: 40 }],
    [null, { after_min: 1440, clarity_tenths: 50 }],
    [null, { resettled_tenths: 40, sediment_ul: 12_500 }],
  );
  const [first, second] = jarsOf(read).map(readWords);
  assert.equal(first, "not read yet");
  assert.equal(second, "4 h 30 min: 4; 24 h: 5; shaken: 4; 12.5 mL settled");
  assert.deepEqual(readingsOf(read).map(readingWords), [
    "Clarity of 1 jar",
    "Clarity of 1 jar",
    "Clarity after shaking of 1 jar, sediment of 1 jar",
  ]);
  assert.equal(durationWords(45), "45 min");
});

test("a reading that was taken back does not count, whichever phone took it back", () => {
  const read = tried([2, 3], [3, 4]);
  const [last] = read.readings?.slice(-1) ?? [];
  const taken = { ...last, entry: "r9", key: "r9", jars: [], instead_of: ["r0"] } as TrialReading;
  const without = { ...read, readings: [...(read.readings ?? []), taken] };
  assert.deepEqual(
    readingsOf(without).map(({ entry }) => entry),
    ["r1", "r2"],
  );
  assert.deepEqual(jarsOf(without)[0]?.clarity, []);
  const undone = { ...taken, entry: "r99", key: "r99", instead_of: ["r9"] };
  const again = { ...read, readings: [...(without.readings ?? []), undone] };
  assert.equal(readingsOf(again).length, 3);
});

test("sediment that cannot be names its jar, and so does one read too often", () => {
  const one = trial([jar(1, 0), jar(2, 0)]);
  assert.match(readingsFault(one, { 1: { sediment: "a bit" } }) ?? "", /^Jar 2: .*0 to 500 mL/);
  assert.match(readingsFault(one, { 0: { sediment: "501" } }) ?? "", /^Jar 1/);
  assert.equal(readingsFault(one, { 0: { sediment: "0" } }), null);
  const fifty = Array.from({ length: 50 }, () => [{ resettled_tenths: 40 }]);
  const full = trial([jar(1, 0)], {}, ...fifty);
  assert.match(readingsFault(full, { 0: { resettled: 4 } }) ?? "", /50 readings/);
});

test("the lowest bright dose with all above it bright is proposed, with the reason", () => {
  const proposal = proposalWords(tried([1, 2], [2, 4, 3], [3, 4], [4, 5]), {});
  assert.equal(proposal?.says, "3 pt of isinglass and 0.5 pt of auxiliary a barrel");
  assert.deepEqual(proposal?.why.slice(0, 2), [
    "Isinglass 1042 mL/hL, 426 mL in a firkin. Auxiliary 174 mL/hL, 71 mL in a firkin.",
    "The lowest dose that was bright (4 or better) 4 to 5 h after and after every shaking, as was every jar with more isinglass. 2 jars are on that plateau.",
  ]);
});

test("a dose bright between two that are not was luck", () => {
  assert.equal(proposalWords(tried([2, 5], [3, 3], [4, 5]), {})?.dose?.isinglass_pt, 4);
});

test("where nothing is proposed it says what lacks", () => {
  const why = (read: Trial) => proposalWords(read, {})?.why[0] ?? "";
  const at = (after_min: number) => trial([jar(2, 0)], {}, [{ after_min, clarity_tenths: 50 }]);
  assert.match(why(at(60)), /Nothing was read 4 to 5 h after/);
  assert.match(why(at(240)), /shaken/);
  assert.match(why(tried([2, 3])), /No dose was bright in time/);
});

test("a jar read ten days on is judged all the same", () => {
  const read = { after_min: 270, clarity_tenths: 50 };
  const late = { after_min: 20_000, clarity_tenths: 50 };
  const jars = trial([jar(3, 0)], {}, [read], [{ resettled_tenths: 50 }], [late]);
  assert.notEqual(proposalWords(jars, {})?.dose, null);
});

test("the beer's rates are set in the ledger's units, and none of auxiliary takes it away", () => {
  const silica = trial([], { auxiliary: "auxiliary_silica" });
  const dose = { isinglass_pt: 3, auxiliary_pt: 0.5, settled_ml: null };
  const rates = ratesOf(dose, silica);
  assert.deepEqual(rates, {
    isinglass_ml_per_hl: 1042,
    auxiliary_ml_per_hl: 174,
    auxiliary: "auxiliary_silica",
  });
  assert.equal(areRatesOf(rates, rates), true);
  assert.equal(areRatesOf({ ...rates, isinglass_ml_per_hl: 850 }, rates), false);
  const without = ratesOf({ ...dose, auxiliary_pt: 0 }, silica);
  assert.deepEqual([without.auxiliary, without.auxiliary_ml_per_hl], ["none", 0]);
});

test("a beer's trials stand with the last first, and say what came of them", () => {
  const trials = new Map([
    ["a", { ...tried([3, 5]), fields: { ...tried([3, 5]).fields, started_at: ago(20) } }],
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
