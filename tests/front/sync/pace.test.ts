// When the engine goes to the brewery.

import assert from "node:assert/strict";
import { test } from "node:test";
import { Pace } from "../../../static/src/sync/pace.ts";

test("while all is well it goes at every occasion, and every half minute", () => {
  const pace = new Pace(() => 0.5);
  for (const occasion of ["saved", "hope", "asked", "due"] as const) {
    assert.equal(pace.may(occasion, 0), true, occasion);
  }
  pace.succeeded(1000);
  assert.equal(pace.dueMs, 31_000);
  assert.equal(pace.may("due", 30_999), false);
  assert.equal(pace.may("saved", 1001), true);
});

test("with every failure the bound doubles, up to a minute, and the wait is anywhere below", () => {
  const [soonest, latest] = [new Pace(() => 0), new Pace(() => 0.999999)];
  const waits = Array.from({ length: 8 }, () => {
    soonest.failed(0, null);
    latest.failed(0, null);
    return [soonest.dueMs, Math.round(latest.dueMs / 1000)];
  });
  const bounds = waits.map(([, bound]) => bound);
  assert.deepEqual(bounds, [2, 4, 8, 16, 32, 60, 60, 60]);
  assert.ok(waits.every(([least]) => least === 1000));
});

test("a save does not hurry a brewery that is silent; hope and a person do", () => {
  const pace = new Pace(() => 0.5);
  pace.failed(0, null);
  assert.equal(pace.may("saved", 1), false);
  assert.equal(pace.may("due", 1), false);
  assert.equal(pace.may("hope", 1), true);
  assert.equal(pace.failures, 0);
  pace.failed(1, null);
  assert.equal(pace.may("asked", 2), true);
});

test("asked to be left alone for two minutes, only a person does not wait", () => {
  const pace = new Pace(() => 0);
  pace.failed(0, 120_000);
  assert.equal(pace.dueMs, 120_000);
  for (const occasion of ["saved", "hope", "due"] as const) {
    assert.equal(pace.may(occasion, 119_999), false, occasion);
  }
  assert.equal(pace.may("due", 120_000), true);
  pace.failed(0, 120_000);
  assert.equal(pace.may("asked", 1), true);
});
