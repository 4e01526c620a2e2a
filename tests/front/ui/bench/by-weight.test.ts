// Litres from the scale: in range or in words what is wrong, and how the fill stands to its size.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readWeighed, toleranceWords } from "../../../../static/src/ui/bench/by-weight.ts";

const FIRKIN_ML = 40_915;
const weighed = (grossKg: string, more: object = {}) =>
  readWeighed({ grossKg, tareKg: "9.6", gravity: "1.0100", tempC: "12", ...more }, FIRKIN_ML, {});
const words = (grossKg: string) => {
  const { worked } = weighed(grossKg);
  return worked === null ? "" : toleranceWords(worked.result).replaceAll("\u00a0", " ");
};

test("a firkin of some 51 kg is about full", () => {
  const { worked } = weighed("50.9");
  assert.ok(Math.abs((worked?.result.volume_ml ?? 0) - 40_900) < 100);
  assert.ok(worked?.cautions.includes("lifting_beyond_filter"));
});

test("over and under its size are said", () => {
  assert.match(words("52.9"), /^2 L over its size: more than the excise allows/);
  assert.match(words("50.4"), /under its size\.$/);
});

test("what is missing, no figure or lighter than its tare is told in kilograms", () => {
  assert.equal(weighed("").fault, "Weight with beer: from 0 to 500.");
  assert.equal(weighed("50", { tempC: "warm" }).fault, "Temperature: from 0 to 40.");
  assert.equal(weighed("8").fault, "Weight empty: from 0 to 8.");
});
