// The inside measures of a cask as they are asked.

import assert from "node:assert/strict";
import { test } from "node:test";
import { withInside, wrongInside } from "../../../../static/src/ui/container/inside.ts";

const GIVEN = { bung_diameter_mm: 392, head_diameter_mm: 314, length_mm: 385 };

test("three measures are one fact", () => {
  assert.deepEqual(wrongInside(GIVEN), {});
  assert.deepEqual(withInside({ kind: "firkin", ...GIVEN }), { kind: "firkin", inside: GIVEN });
});

test("none is none", () => {
  assert.deepEqual(wrongInside({ kind: "firkin" }), {});
  assert.deepEqual(withInside({ kind: "firkin" }), { kind: "firkin" });
});

test("one alone, one beyond a cask, and a head wider than the bung are said to be wrong", () => {
  assert.deepEqual(Object.keys(wrongInside({ length_mm: 385 })), [
    "bung_diameter_mm",
    "head_diameter_mm",
  ]);
  assert.match(wrongInside({ ...GIVEN, length_mm: 9 })["length_mm"], /^From 50 to 2000 mm/);
  assert.match(wrongInside({ ...GIVEN, head_diameter_mm: 400 })["head_diameter_mm"], /widest/);
});
