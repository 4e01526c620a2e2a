// Figures that a brewery sets: in their range, in millionths, and given up again.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FIGURES, type FigureId } from "../../../../static/src/domain/figures.ts";
import type { Setting } from "../../../../static/src/domain/records.ts";
import {
  hintWords,
  isSettable,
  readFigure,
  SETTABLE,
  typedFigure,
} from "../../../../static/src/ui/office/figures/setting.ts";
import { ownValues } from "../../../../static/src/ui/own-values.ts";

const row = (fields: Setting["fields"]): Setting => ({ fields, set_by: {} });

test("what is published as a table is nobody's setting", () => {
  assert.equal(isSettable("cellar_temp_c"), true);
  assert.equal(isSettable("henry_co2"), false);
  assert.equal(isSettable(undefined), false);
  const plain = (value: unknown) =>
    typeof value === "number" || (Array.isArray(value) && value.every(Number.isFinite));
  assert.ok(SETTABLE.every((id) => plain(FIGURES[id].value)));
});

test("a value in its range is kept as it was typed", () => {
  const kept = (id: FigureId, text: string) => {
    const read = readFigure(FIGURES[id], text);
    return "facts" in read ? read.facts : read.fault;
  };
  assert.deepEqual(kept("cask_target_vol", " 1,45 "), { value_millionths: 1_450_000 });
  assert.deepEqual(kept("resettles_most", "5"), { value_millionths: 5_000_000 });
  assert.deepEqual(kept("ethanol_g_per_ml", "0.7893"), { value_millionths: 789_300 });
  const steps = { values_millionths: [0, 500_000, 1_250_000] };
  assert.deepEqual(kept("trial_auxiliary_pt", " 0  0,5; 1.25 "), steps);
  assert.deepEqual(kept("strength_classes", "4 5.5 8"), {
    values_millionths: [4_000_000, 5_500_000, 8_000_000],
  });
});

test("words, more places and what lies outside are faults in words", () => {
  for (const text of ["", "many", "1.2345678", "-1"]) {
    assert.ok("fault" in readFigure(FIGURES.cask_target_vol, text), text);
  }
  assert.deepEqual(readFigure(FIGURES.cellar_temp_c, "30"), { fault: "From 5 to 20 °C." });
});

test("of a list the count, the range and the order are looked at, each with its words", () => {
  const fault = (id: FigureId, text: string) => {
    const read = readFigure(FIGURES[id], text);
    return "fault" in read ? read.fault : "";
  };
  assert.match(fault("strength_classes", "4 5.5"), /^3 figures with spaces between/);
  assert.match(fault("trial_isinglass_pt", ""), /^1 to 14 figures with spaces/);
  assert.match(fault("trial_isinglass_pt", "2 three"), /^1 to 14 figures/);
  assert.equal(fault("strength_classes", "4 5 31"), "From 0 to 30 % vol.");
  assert.match(fault("conditioning_counts_between_c", "20 10"), /^The least first/);
  assert.equal(fault("conditioning_counts_between_c", "10 10"), "");
  assert.equal(
    hintWords(FIGURES.conditioning_counts_between_c),
    "2 figures, the least first, from 0 to 40 °C.",
  );
  assert.equal(typedFigure(FIGURES.trial_auxiliary_pt.value), "0 0.25 0.5 0.75 1");
});

test("a value given up again leaves the default", () => {
  const rows = new Map([
    ["cellar_temp_c", row({ value_millionths: 11_500_000 })],
    ["resettles_most", row({ value_millionths: 5_000_000, retired: true })],
    ["cask_target_vol", row({})],
    ["trial_isinglass_pt", row({ values_millionths: [1_000_000, 2_500_000] })],
    ["strength_classes", row({ values_millionths: [], retired: true })],
  ]);
  assert.deepEqual(ownValues(rows), { cellar_temp_c: 11.5, trial_isinglass_pt: [1, 2.5] });
  const fine = new Map([["ethanol_g_per_ml", row({ value_millionths: 789_300 })]]);
  assert.deepEqual(ownValues(fine), { ethanol_g_per_ml: 0.7893 });
});
