// How far a gyle has come.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Gyle } from "../../../../static/src/domain/records.ts";
import {
  gylesToRack,
  holdingWords,
  leftMl,
  openGyles,
  shortWords,
} from "../../../../static/src/ui/bench/gyles.ts";
import { container, FIRKIN, filled, KEG } from "../brewery.ts";

const gyle = (fields: Gyle["fields"], drawn_ml = 0): Gyle => ({ fields, set_by: {}, drawn_ml });

test("what is left counts down, below nought too, and is not made up", () => {
  assert.equal(leftMl(gyle({ volume_ml: 820_000 }, 400_000)), 420_000);
  assert.equal(leftMl(gyle({ volume_ml: 100 }, 150)), -50);
  assert.equal(leftMl(gyle({})), null);
  assert.equal(leftMl(undefined), null);
});

test("a gyle with less left than is to be filled says so before it is noted", () => {
  const left = gyle({ volume_ml: 820_000 }, 793_600);
  const says = (ml: number) => shortWords(left, ml).replaceAll("\u00a0", " ");
  assert.equal(says(40_900), "26.4 L left of this gyle: 14.5 L short.");
  assert.equal(says(26_400), "");
  assert.equal(shortWords(gyle({}), 40_900), "");
  const gone = shortWords(gyle({ volume_ml: 100 }, 150), 40_900).replaceAll("\u00a0", " ");
  assert.equal(gone, "0 L left of this gyle: 40.9 L short.");
});

test("the newest brew stands first, retired ones not at all", () => {
  const gyles = new Map([
    ["a", gyle({ brewed_on: "2026-11-01" })],
    ["b", gyle({ brewed_on: "2026-11-12" })],
    ["c", gyle({ brewed_on: "2026-11-20", retired: true })],
  ]);
  assert.deepEqual(
    openGyles(gyles).map(([id]) => id),
    ["b", "a"],
  );
});

test("gyles with a container's worth left stand first, racked and long brewed ones behind", () => {
  const { toRack, older } = gylesToRack(
    new Map([
      ["full", gyle({ brewed_on: "2026-11-20", volume_ml: 820_000 })],
      ["racked", gyle({ brewed_on: "2026-11-10", volume_ml: 820_000 }, 803_600)],
      ["too far", gyle({ brewed_on: "2026-11-09", volume_ml: 100_000 }, 120_000)],
      ["eight weeks", gyle({ brewed_on: "2026-09-30", volume_ml: 820_000 })],
      ["longer", gyle({ brewed_on: "2026-09-29", volume_ml: 820_000 })],
      ["nothing said", gyle({})],
    ]),
    "2026-11-25T12:00:00.000Z",
  );
  assert.deepEqual(
    toRack.map(([id]) => id),
    ["full", "eight weeks", "nothing said"],
  );
  assert.deepEqual(
    older.map(([id]) => id),
    ["racked", "too far", "longer"],
  );
});

test("the containers filled are called by their kind where they are of one", () => {
  const held = (...all: ReturnType<typeof container>[]) =>
    holdingWords("g318", new Map(all.map((one) => [one.number, one])));
  const firkins = [
    container("1", FIRKIN, filled(1, null)),
    container("2", FIRKIN, filled(1, null)),
  ];
  const keg = container("3", KEG, filled(1, null));
  assert.equal(held(), "none filled yet");
  assert.equal(held(...firkins), "2 firkins filled");
  assert.equal(held(keg), "1 × 30 L keg filled");
  assert.equal(held(...firkins, keg), "3 containers filled");
});
