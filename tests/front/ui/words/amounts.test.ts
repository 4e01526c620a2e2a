// Volumes are whole millilitres; people read and type litres.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  degrees,
  listWords,
  litres,
  litresAtMost,
  strength,
  typedMl,
} from "../../../../static/src/ui/words/amounts.ts";

test("litres to one decimal, halves up, without an empty decimal", () => {
  assert.deepEqual(
    [40_915, 36_000, 20_457, 40_950, 49, 50, 0].map(litres),
    ["40.9", "36", "20.5", "41", "0", "0.1", "0"].map((n) => `${n}\u00a0L`),
  );
});

test("a limit is never rounded up to what it refuses", () => {
  assert.deepEqual([42_960, 42_900, 99].map(litresAtMost), [
    "42.9\u00a0L",
    "42.9\u00a0L",
    "0\u00a0L",
  ]);
});

test("strength and temperature", () => {
  assert.equal(strength(42), "4.2\u00a0%");
  assert.equal(degrees(115), "11.5\u00a0°C");
});

test("typed litres are read with point or comma, and nothing else is", () => {
  assert.deepEqual(
    ["36", "36.5", "36,5", " 40.915 ", "36."].map(typedMl),
    [36_000, 36_500, 36_500, 40_915, 36_000],
  );
  assert.deepEqual(["", "abc", "-3", "1.2.3", "99999", "1e3"].map(typedMl), Array(6).fill(null));
});

test("a long list of numbers is cut short", () => {
  assert.equal(listWords(["117"]), "117");
  assert.equal(listWords(["117", "118", "119"]), "117, 118 and 119");
  assert.equal(listWords(["1", "2", "3", "4", "5", "6", "7"]), "1, 2, 3 and 4 more");
});
