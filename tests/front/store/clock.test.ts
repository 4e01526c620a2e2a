// The phone's clock, put right by what the brewery's was seen to say.

import assert from "node:assert/strict";
import { test } from "node:test";
import { asTime, Clock } from "../../../static/src/store/clock.ts";

const NOON = Date.parse("2026-03-02T12:00:00.000Z");
const clockAt = (ms: number) =>
  new Clock({ nowMs: () => ms, stopwatchMs: () => 0, page: "a page" });

test("the first answer sets the offset to the middle of what it can be", () => {
  const clock = clockAt(NOON);
  const offset = clock.measured(asTime(NOON + 3_600_000), NOON, NOON + 200);
  assert.equal(offset.offsetMs, 3_600_000 - 100);
  clock.hear(offset);
  assert.equal(clock.now(), "2026-03-02T12:59:59.900Z");
});

test("a slow answer that the offset agrees with does not move it", () => {
  const clock = clockAt(NOON);
  clock.hear({ offsetMs: 1000, measuredAt: asTime(NOON) });
  assert.equal(clock.measured(asTime(NOON), NOON - 20_000, NOON + 10_000).offsetMs, 1000);
});

test("an offset that cannot be right any more is moved as far as needed and no further", () => {
  const clock = clockAt(NOON);
  clock.hear({ offsetMs: 0, measuredAt: asTime(NOON) });
  assert.equal(clock.measured(asTime(NOON + 60_000), NOON, NOON + 100).offsetMs, 59_900);
  assert.equal(clock.measured(asTime(NOON - 60_000), NOON, NOON + 100).offsetMs, -60_000);
});

test("a time never goes back by jitter, and does by a correction", () => {
  const clock = clockAt(NOON);
  assert.equal(clock.nextAfter(asTime(NOON + 90_000)), asTime(NOON + 90_000));
  assert.equal(clock.nextAfter(asTime(NOON + 121_000)), asTime(NOON));
  assert.equal(clock.nextAfter(""), asTime(NOON));
});
