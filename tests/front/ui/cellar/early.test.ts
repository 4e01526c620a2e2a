// What is said of a tap before its time.

import assert from "node:assert/strict";
import { test } from "node:test";
import { earlyWords } from "../../../../static/src/ui/cellar/early.ts";
import { ago, container, FIRKIN, filled, KEG, known, type Told } from "../brewery.ts";

const words = (...told: Told[]): string =>
  earlyWords(container("88", ...told), known, {}).replaceAll("\u00a0", " ");

const ready = filled(20, "2026-12-30");
const vented = (days: number, hours = 0): Told[] => [
  [ago(days + 2), "stillaged", {}],
  [ago(days, hours), "vented", { spile: "soft" }],
];

test("tapped an hour after venting, it says from when it can be sold", () => {
  assert.match(
    words(FIRKIN, ready, ...vented(0, 1)),
    /^ Early: it can be sold from .*\d\d:\d\d\.$/,
  );
});

test("tapped while it conditions, it says until when, also a keg", () => {
  const early = /^ Early: it conditions until \w{3} \d\d:\d\d\.$/;
  assert.match(words(FIRKIN, filled(2, null), ...vented(0, 1)), early);
  assert.match(words(KEG, filled(2, null, "g318", 30_000)), early);
});

test("in its time nothing is said, nor of an empty one", () => {
  const hard: Told = [ago(2), "vented", { spile: "hard" }];
  assert.equal(words(FIRKIN, ready, ...vented(4), hard), "");
  assert.equal(words(KEG, filled(20, null, "g318", 30_000)), "");
  assert.equal(words(FIRKIN), "");
});

test("tapped for a sale to come, that hour counts", () => {
  const planned = (days: number): Told => [ago(0, 1), "planned", { sale_at: ago(-days) }];
  assert.equal(words(FIRKIN, ready, ...vented(0, 2), planned(6)), "");
  assert.notEqual(words(FIRKIN, ready, ...vented(0, 2), planned(0.1)), "");
});
