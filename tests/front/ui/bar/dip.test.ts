// A dip as it is typed.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readDip, unitAfter, unitsFor } from "../../../../static/src/ui/bar/dip.ts";
import { ago, container, FIRKIN, filled, KEG, known, type Told } from "../brewery.ts";

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

const plain = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ");

test("half of the rod wet is half a cask, by a model where its measures are not known", () => {
  const full = container("88", FIRKIN, filled(20, null));
  const dip = readDip("196", "mm", full, known);
  assert.ok(dip.left_ml !== null && Math.abs(dip.left_ml - 40915 / 2) < 100);
  assert.equal(dip.measured?.facts["wet_mm"], 196);
  assert.match(dip.measured?.by ?? "", /model/);
  assert.match(plain(dip.same) ?? "", /^20\.5 L, 33 pints to sell above the sediment$/);
  assert.equal(readDip("19.6", "cm", full, known).left_ml, dip.left_ml);
});

test("a cask's own measures count, even where they disagree with its size", () => {
  const inside = { bung_diameter_mm: 400, head_diameter_mm: 320, length_mm: 380 };
  const measured = (capacity_ml: number): Told => [
    ago(400),
    "registered",
    { kind: "firkin", capacity_ml, inside },
  ];
  const dip = readDip("200", "mm", container("88", measured(41000), filled(20, null)), known);
  assert.match(dip.measured?.by ?? "", /own inside measures/);
  assert.ok(
    readDip("200", "mm", container("88", measured(80000), filled(20, null)), known).left_ml,
  );
});

test("no rod is wet deeper than the cask", () => {
  const full = container("88", FIRKIN, filled(20, null));
  assert.match(readDip("500", "mm", full, known).cannot ?? "", /mm deep at the bung/);
  assert.match(readDip("", "mm", full, known).cannot ?? "", /how many mm of the rod/);
});

test("once it is tilted the rod is refused, and litres are not", () => {
  const tilted = container("88", FIRKIN, filled(20, null), [ago(1), "stooped", {}]);
  assert.match(readDip("100", "mm", tilted, known).cannot ?? "", /^It is tilted/);
  assert.equal(readDip("9", "litres", tilted, known).left_ml, 9000);
});

const TARED: Told = [ago(400), "registered", { kind: "firkin", capacity_ml: 40915, tare_g: 9600 }];
const knowing = (fields: object) =>
  ({ ...known, gyles: new Map([["g318", { fields, set_by: {}, drawn_ml: 0 }]]) }) as typeof known;
const GRAVITY = knowing({ present_gravity_e4: 10_100 });

test("a cask on the scales, tilted or not, by its own tare and the gravity of its gyle", () => {
  const tilted = container("88", TARED, filled(20, null), [ago(1), "stooped", {}]);
  const dip = readDip("30.3", "kg", tilted, GRAVITY);
  // 20.7 kg of beer of 1.0100 x 0.9995 = 20.51 L.
  assert.ok(dip.left_ml !== null && Math.abs(dip.left_ml - 20_505) < 10);
  assert.match(plain(dip.measured?.by) ?? "", /^By weight, 9\.6 kg of it .* 1\.0100 at 12 °C\.$/);
  assert.deepEqual(dip.measured?.facts, {});
});

test("scales say nothing without its tare or its gravity, nor below its tare, and say so", () => {
  const cannot = (typed: string, tared: boolean, fields: object) =>
    readDip(typed, "kg", container("88", tared ? TARED : FIRKIN, filled(20, null)), knowing(fields))
      .cannot ?? "";
  const gravity = { present_gravity_e4: 10_100 };
  assert.match(cannot("30", false, gravity), /weight when empty is not on record/);
  assert.match(cannot("30", true, {}), /gravity of its gyle is not entered/);
  assert.match(cannot("9", true, gravity), /^It weighs 9\.6 kg empty/);
  assert.match(cannot("", true, gravity), /how many kilograms/);
});

test("a cask standing on its head is dipped along its length", () => {
  const full = container("88", FIRKIN, filled(20, null));
  const dip = readDip("192", "upright", full, known);
  assert.ok(dip.left_ml !== null && Math.abs(dip.left_ml - 40915 / 2) < 150);
  assert.deepEqual(dip.measured?.facts, {});
  assert.match(readDip("900", "upright", full, known).cannot ?? "", /long from head to head/);
});

test("a keg is not dipped with a rod; the units go round", () => {
  const units = unitsFor(container("88", FIRKIN));
  assert.deepEqual(
    units.map((unit) => unitAfter(unit, units)),
    ["pints", "mm", "cm", "upright", "kg", "litres"],
  );
  assert.deepEqual(unitsFor(container("K12", KEG)), ["litres", "pints", "kg"]);
});
