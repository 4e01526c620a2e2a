// Empties that were only counted at a door, and told by number in the yard later.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Drop } from "../../../../static/src/domain/records.ts";
import {
  countedWords,
  matchDrafts,
  openCounts,
  openWords,
} from "../../../../static/src/ui/out/counted.ts";
import { ago, container, FIRKIN, NOW } from "../brewery.ts";

const drop = (days: number, counted: number, more: Drop["fields"] = {}): Drop => ({
  fields: { customer: "c1", handed_over_at: ago(days), empties_counted: counted, ...more },
  set_by: {},
});
const out = (number: string, days: number, customer = "c1") =>
  container(number, FIRKIN, [ago(days), "sent", { customer, due_on: null }]);
const DROPS = new Map([
  ["later", drop(2, 1)],
  ["first", drop(5, 2, { matched: ["110"] })],
  ["done", drop(9, 1, { matched: ["109"] })],
  ["other", drop(5, 3, { customer: "c2" })],
  ["gone", drop(5, 3, { retired: true })],
  ["miscounted", drop(8, 3, { matched: ["108"], count_closed: true })],
]);

test("what is open is told by customer, the longest ago first", () => {
  assert.deepEqual(
    openCounts(DROPS, "c1").map((one) => one.drop),
    ["first", "later"],
  );
  assert.deepEqual(openCounts(new Map([["made up", { fields: {}, set_by: {} }]]), "c1"), []);
});

test("returned numbers fill the oldest count first, then the next, then none", () => {
  const standings = [out("111", 30), out("112", 20), out("113", 10)];
  assert.deepEqual(matchDrafts(standings, DROPS), [
    { kind: "drop", subject: "first", facts: { matched: ["110", "111"] } },
    { kind: "drop", subject: "later", facts: { matched: ["112"] } },
  ]);
});

test("what was sent after the count, or is of another customer, is none of it", () => {
  assert.deepEqual(matchDrafts([out("120", 1)], DROPS), []);
  assert.deepEqual(matchDrafts([out("121", 3)], DROPS), [
    { kind: "drop", subject: "later", facts: { matched: ["121"] } },
  ]);
  assert.deepEqual(matchDrafts([out("122", 30, "c3"), null, container("7", FIRKIN)], DROPS), []);
  assert.equal(DROPS.get("first")?.fields.matched?.length, 1, "and nothing is changed in passing");
});

test("it is said in the yard before the number is recorded, and at the customer until it is", () => {
  assert.equal(
    countedWords(out("111", 30), DROPS, NOW),
    "One of 2 that were only counted on 20 Nov.",
  );
  assert.equal(countedWords(out("111", 3), DROPS, NOW), "The one that was only counted on 23 Nov.");
  assert.equal(countedWords(out("111", 1), DROPS, NOW), "");
  assert.equal(countedWords(null, DROPS, NOW), "");
  assert.deepEqual(
    openCounts(DROPS, "c1").map((one) => openWords(one, NOW)),
    [
      "2 empties were taken along on 20 Nov and only counted: 1 is still to be told by number.",
      "1 empty was taken along on 23 Nov and only counted: 1 is still to be told by number.",
    ],
  );
});
