// The one thing that a line of the Cellar offers.

import assert from "node:assert/strict";
import { test } from "node:test";
import { asFull } from "../../../../static/src/ui/cellar/full.ts";
import { nextStep } from "../../../../static/src/ui/cellar/next.ts";
import { ago, container, FIRKIN, filled, KEG, known } from "../brewery.ts";

const next = (...told: Parameters<typeof container>[1][]) => {
  const found = asFull(container("104", ...told), known);
  assert.ok(found);
  return nextStep(found);
};
const ready = filled(20, "2026-12-18");

test("a cask goes from the cold room to the glass step by step", () => {
  const soft = [ago(1), "vented", { spile: "soft" }] as const;
  assert.equal(next(FIRKIN, filled(2, null)), "move");
  assert.equal(next(FIRKIN, ready), "stillage");
  assert.equal(next(FIRKIN, ready, [ago(2), "stillaged", {}]), "vent");
  assert.equal(next(FIRKIN, ready, soft), "hard");
  assert.equal(next(FIRKIN, ready, soft, [ago(0, 5), "vented", { spile: "hard" }]), "tap");
  assert.equal(next(FIRKIN, ready, soft, [ago(0, 4), "tapped", {}]), "bar");
});

test("a keg is tapped without stillage and spile", () => {
  assert.equal(next(KEG, filled(20, null, "g318", 29500)), "tap");
});

test("what is held, past or in doubt is for a person to decide", () => {
  assert.equal(next(FIRKIN, ready, [ago(1), "set_aside", { why: "" }]), "decide");
  assert.equal(next(FIRKIN, filled(50, "2026-11-20")), "decide");
  assert.equal(next(FIRKIN, ready, filled(20, null, "g319")), "decide");
});

test("near its best before it can still go up", () => {
  assert.equal(next(FIRKIN, filled(40, "2026-11-27")), "stillage");
});
