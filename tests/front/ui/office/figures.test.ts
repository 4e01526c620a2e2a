// Figures that a brewery sets: in their range, in millionths, and given up again.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FIGURES } from "../../../../static/src/domain/figures.ts";
import type { Setting } from "../../../../static/src/domain/records.ts";
import {
  isSettable,
  readFigure,
  SETTABLE,
} from "../../../../static/src/ui/office/figures/setting.ts";
import { ownValues } from "../../../../static/src/ui/own-values.ts";

const row = (fields: Setting["fields"]): Setting => ({ fields, set_by: {} });

test("what is published as a table is nobody's setting", () => {
  assert.equal(isSettable("cellar_temp_c"), true);
  assert.equal(isSettable("henry_co2"), false);
  assert.equal(isSettable(undefined), false);
  assert.ok(SETTABLE.every((id) => typeof FIGURES[id].value === "number"));
});

test("a value in its range is kept as it was typed", () => {
  assert.deepEqual(readFigure(FIGURES.cask_target_vol, " 1,45 "), { millionths: 1_450_000 });
  assert.deepEqual(readFigure(FIGURES.resettles_most, "5"), { millionths: 5_000_000 });
  assert.deepEqual(readFigure(FIGURES.ethanol_g_per_ml, "0.7893"), { millionths: 789_300 });
});

test("words, more places and what lies outside are faults in words", () => {
  for (const text of ["", "many", "1.2345678", "-1"]) {
    assert.ok("fault" in readFigure(FIGURES.cask_target_vol, text), text);
  }
  assert.deepEqual(readFigure(FIGURES.cellar_temp_c, "30"), { fault: "From 5 to 20 °C." });
});

test("a value given up again leaves the default", () => {
  const rows = new Map([
    ["cellar_temp_c", row({ value_millionths: 11_500_000 })],
    ["resettles_most", row({ value_millionths: 5_000_000, retired: true })],
    ["cask_target_vol", row({})],
  ]);
  assert.deepEqual(ownValues(rows), { cellar_temp_c: 11.5 });
  const fine = new Map([["ethanol_g_per_ml", row({ value_millionths: 789_300 })]]);
  assert.deepEqual(ownValues(fine), { ethanol_g_per_ml: 0.7893 });
});
