// Containers about to be filled, by size: a run of numbers is seldom all firkins.

import assert from "node:assert/strict";
import { test } from "node:test";
import { limitBarOf, sizeName, sizesOf } from "../../../../static/src/ui/bench/sizes.ts";

const FIRKIN = { kind: "firkin", volume_ml: 40_915, limit_millibar: null };
const PIN = { kind: "pin", volume_ml: 20_460, limit_millibar: null };

test("those of a kind that take the same stand together, the largest first", () => {
  const found = sizesOf([PIN, FIRKIN, { ...FIRKIN, volume_ml: 36_500 }, FIRKIN, PIN]);
  assert.deepEqual(
    found.map(({ kind, volume_ml, count }) => [kind, volume_ml, count]),
    [
      ["firkin", 40_915, 2],
      ["firkin", 36_500, 1],
      ["pin", 20_460, 2],
    ],
  );
});

test("what holds nothing yet is no size", () => {
  assert.deepEqual(sizesOf([{ ...FIRKIN, volume_ml: 0 }]), []);
});

test("the lowest marked limit counts for all, and one with no mark raises none", () => {
  const [size] = sizesOf([
    { ...FIRKIN, limit_millibar: 3000 },
    FIRKIN,
    { ...FIRKIN, limit_millibar: 2500 },
  ]);
  assert.equal(size?.limit_millibar, 2500);
  assert.equal(size && limitBarOf(size), 2.5);
});

test("a limit beyond what the rules take is told to them as their highest", () => {
  assert.equal(limitBarOf({ ...FIRKIN, limit_millibar: 60_000 }), 10);
});

test("a size is named by its kind, and by its litres where they are not the kind's", () => {
  assert.equal(sizeName("firkin", 40_915), "firkin");
  assert.equal(sizeName("firkin", 36_500).replaceAll("\u00a0", " "), "firkin of 36.5 L");
});
