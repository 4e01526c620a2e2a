// Which entries a container's page offers first, and that none is ever out of reach.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import { DEEDS } from "../../../../static/src/ui/container/deeds.ts";
import { likely, others } from "../../../../static/src/ui/container/likely.ts";
import { ago, container, FIRKIN, filled, KEG, type Told } from "../brewery.ts";

const first = (...told: Told[]): string[] => likely(container("117", ...told));

const sent: Told = [ago(1), "sent", { customer: "c1", due_on: null }];
const soft: Told = [ago(1), "vented", { spile: "soft" }];

test("the next step in its life comes first", () => {
  assert.deepEqual(first(FIRKIN), ["wash"]);
  assert.deepEqual(first(FIRKIN, [ago(1), "washed", {}]), ["pass"]);
  assert.deepEqual(first(FIRKIN, filled(9, null)), ["stillage", "send"]);
  assert.deepEqual(first(FIRKIN, filled(9, null), [ago(2), "stillaged", {}]), ["soft", "hard"]);
  assert.deepEqual(first(FIRKIN, filled(9, null), soft), ["hard", "tap"]);
  assert.deepEqual(first(FIRKIN, filled(9, null), soft, [ago(0), "tapped", {}]), ["dip", "empty"]);
  assert.deepEqual(first(FIRKIN, filled(9, null), sent), ["back", "backFull"]);
});

test("a keg has no spile", () => {
  assert.deepEqual(first(KEG, filled(9, null)), ["tap", "send"]);
});

test("one that is held is let go first, one not on record is entered", () => {
  assert.equal(first(FIRKIN, [ago(1), "set_aside", { why: "leaks" }])[0], "release");
  assert.equal(first(FIRKIN, [ago(1), "missing", {}])[0], "found");
  assert.deepEqual(first(FIRKIN, [ago(1), "scrapped", {}]), ["enter"]);
  assert.equal(first()[0], "enter");
});

test("LIFE-22: whatever has happened, it can be noted", () => {
  const lives: Standing[] = [
    container("117"),
    container("117", FIRKIN, filled(9, null), sent),
    container("117", FIRKIN, [ago(1), "scrapped", {}]),
  ];
  for (const standing of lives) {
    const offered = new Set<string>([...likely(standing), ...others(standing)]);
    const left = Object.keys(DEEDS).filter((name) => !offered.has(name));
    // These two end a hold; without one there is nothing for them to end.
    assert.deepEqual(left, ["release", "found"]);
  }
});
