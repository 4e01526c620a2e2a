// Which lots a trial was made with, and whether the beer's rates were set with the lot that goes in.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { LotFields, TrialFields } from "../../../../static/src/domain/record-fields.ts";
import type { Lot, Trial } from "../../../../static/src/domain/records.ts";
import { doseLines } from "../../../../static/src/ui/bench/doses.ts";
import { NO_LOT } from "../../../../static/src/ui/bench/lots.ts";
import {
  behindRates,
  chosenFor,
  lotFacts,
  lotsTried,
  triedIn,
} from "../../../../static/src/ui/bench/trial/lots-tried.ts";
import type { Known } from "../../../../static/src/ui/words/known.ts";
import { ago, known as plain } from "../brewery.ts";

const lot = (name: string, what: LotFields["what"], more: object = {}): [string, Lot] => [
  name.toLowerCase(),
  { fields: { name, what, ...more }, set_by: {} },
];
const LOTS = new Map([
  lot("F12", "isinglass"),
  lot("F13", "isinglass"),
  lot("F9", "isinglass", { retired: true }),
  lot("S4", "auxiliary_silica"),
]);

/** Two jars with silica, of which the second was bright: 3 pints of isinglass are proposed. */
const trial = (more: Partial<TrialFields> = {}): Trial => ({
  fields: {
    gyle: "g318",
    sample_ml: 500,
    started_at: ago(2),
    auxiliary: "auxiliary_silica",
    samples: [2, 3].map((pt) => ({ isinglass_centipt: pt * 100, auxiliary_centipt: 50 })),
    ...more,
  },
  set_by: {},
  readings: [{ after_min: 270 }, {}, {}].map(({ after_min }, n) => ({
    since: ago(1),
    entry: `r${n}`,
    by: "Ann",
    inferred: false,
    key: `r${n}`,
    instead_of: [],
    jars: [20, 40].map((score, at) =>
      after_min === undefined
        ? { jar: at + 1, resettled_tenths: score }
        : { jar: at + 1, after_min, clarity_tenths: score },
    ),
  })),
});

const knownWith = (beer: object): Known =>
  ({
    ...plain,
    lots: LOTS,
    beers: new Map([["b1", { fields: { name: "Oystercatcher", ...beer }, set_by: {} }]]),
  }) as unknown as Known;

/** 3 pints of isinglass and half a pint of auxiliary a barrel, each by 1000 / 288 mL/L. */
const RATES = {
  auxiliary: "auxiliary_silica" as const,
  auxiliary_ml_per_hl: 174,
  isinglass_ml_per_hl: 1042,
};
const behind = (trials: Trial[], beer: object = RATES): Trial[] =>
  behindRates(new Map(trials.map((one, n) => [`t${n}`, one])), "b1", knownWith(beer), {});

test("a trial keeps the lot of each finings that is in a jar, and of no other", () => {
  const samples = [{ isinglass_centipt: 200, auxiliary_centipt: 50 }];
  assert.deepEqual(triedIn(samples, "auxiliary_silica"), ["auxiliary_silica", "isinglass"]);
  assert.deepEqual(triedIn([{ isinglass_centipt: 0, auxiliary_centipt: 0 }], ""), []);
  const chosen = { isinglass: "f12", auxiliary_silica: "s4", auxiliary_alginate: "a1" };
  assert.deepEqual(lotFacts(["auxiliary_silica", "isinglass"], chosen), {
    auxiliary_lot: "s4",
    isinglass_lot: "f12",
  });
  assert.deepEqual(lotFacts(["isinglass"], {}), {});
});

test("the lot in use is taken unless another was chosen, or that none is noted", () => {
  const used = { isinglass: "f12" };
  const chosen = (isinglass?: string) =>
    chosenFor(["isinglass"], LOTS, isinglass === undefined ? {} : { isinglass }, used).isinglass;
  assert.deepEqual(
    [chosen(), chosen("f13"), chosen("f9"), chosen(NO_LOT)],
    ["f12", "f13", "f12", undefined],
  );
});

test("a trial says which lots it was made with", () => {
  assert.equal(
    lotsTried([trial({ isinglass_lot: "f12", auxiliary_lot: "s4" })], LOTS),
    "Auxiliary finings (silica) lot S4 and isinglass lot F12",
  );
  assert.equal(lotsTried([trial()], LOTS), "");
});

test("only a trial that proposes the rates as they stand is behind them", () => {
  const one = trial({ isinglass_lot: "f12" });
  assert.deepEqual(behind([one]), [one]);
  assert.deepEqual(behind([one], { ...RATES, isinglass_ml_per_hl: 1100 }), []);
  assert.deepEqual(behind([trial({ retired: true } as object)]), []);
});

test("a dose from another lot than the rate was set with is said aloud", () => {
  const remarks = (tried: Trial[], isinglass?: string) => {
    const gyle = { fining_temp_decidegc: 130 };
    const sizes = [{ kind: "firkin", volume_ml: 40_915, count: 1, limit_millibar: null }];
    const next = isinglass === undefined ? {} : { isinglass };
    const racked = { beer: RATES, gyle, sizes, settings: {}, lots: LOTS, tried, next };
    const line = doseLines(racked).find(({ what }) => what === "isinglass");
    return line?.remarks?.filter(({ look }) => look).map(({ says }) => says);
  };
  const tried = behind([trial({ isinglass_lot: "f9" })]);
  assert.deepEqual(remarks(tried, "f13"), [
    "The rate was set with lot F9, and this is lot F13: a trial shows whether it holds.",
  ]);
  assert.deepEqual(remarks(tried, "f9"), []);
  assert.deepEqual(remarks(tried), []);
  assert.deepEqual(remarks(behind([trial()]), "f13"), []);
  const both = behind([trial({ isinglass_lot: "f9" }), trial({ isinglass_lot: "f13" })]);
  assert.deepEqual(remarks(both, "f13"), []);
});
