// Isinglass into a full cask: not in a vegan beer, and not before the interval after alginate.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Dose } from "../../../../static/src/domain/standing.ts";
import { whyNotFined } from "../../../../static/src/ui/bench/fining.ts";
import { ago, NOW } from "../brewery.ts";

const dose = (what: Dose["what"], hours: number): Dose => ({
  what,
  amount_ml: 70,
  amount_g: null,
  lot: null,
  moves: 0,
  since: ago(0, hours),
  entry: "e",
  by: "Ann",
  inferred: false,
});

test("four hours after alginate it may go in, an hour after it has to wait, and until when", () => {
  assert.equal(whyNotFined([dose("auxiliary_alginate", 4)], false, NOW), null);
  assert.deepEqual(whyNotFined([dose("auxiliary_alginate", 1)], false, NOW), {
    is: "wait",
    until: "2026-11-25T15:01:00.000Z",
  });
});

test("silica, primings and hops are not waited for", () => {
  const doses = [dose("auxiliary_silica", 0), dose("primings", 0), dose("hops", 0)];
  assert.equal(whyNotFined(doses, false, NOW), null);
});

test("a vegan beer is refused whatever the time", () => {
  assert.deepEqual(whyNotFined([], true, NOW), { is: "vegan" });
});

test("what went in months ago, or by a clock that is ahead, stops nobody", () => {
  assert.equal(whyNotFined([dose("auxiliary_alginate", 24 * 200)], false, NOW), null);
  assert.equal(whyNotFined([dose("auxiliary_alginate", -1)], false, NOW)?.is, "wait");
});
