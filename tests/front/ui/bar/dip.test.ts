// A dip as it is typed.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readDip } from "../../../../static/src/ui/bar/dip.ts";
import { ago, container, FIRKIN, filled, known } from "../brewery.ts";

const cask = container("88", FIRKIN, filled(20, null), [ago(1), "dipped", { left_ml: 22000 }]);

test("litres and pints are the same amount, and each shows the other", () => {
  const litres = readDip("14", "litres", cask, known);
  assert.deepEqual([litres.left_ml, litres.cannot, litres.same], [14000, null, "24 pints"]);
  const pints = readDip("24", "pints", cask, known);
  assert.equal(pints.left_ml, 13638);
  assert.equal(pints.same.replaceAll("\u00a0", " "), "13.6 L");
});

test("nothing left is a dip too", () => {
  assert.deepEqual(readDip("0", "litres", cask, known).left_ml, 0);
});

test("more than before is odd, and recorded all the same", () => {
  const dip = readDip("30", "litres", cask, known);
  assert.equal(dip.cannot, null);
  assert.match(dip.odd ?? "", /only 22.L was left before it/);
});

test("more than it can hold is a slip of the finger", () => {
  assert.match(readDip("420", "litres", cask, known).cannot ?? "", /at most/);
});

test("nothing typed asks for the unit that is chosen", () => {
  assert.equal(readDip("", "pints", cask, known).cannot, "Type how many pints are left.");
});
