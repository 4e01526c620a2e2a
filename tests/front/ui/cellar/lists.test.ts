// The Cellar's lists: what is ready, what will be, what lies on the stillage, what to look at.

import assert from "node:assert/strict";
import { test } from "node:test";
import { allFull, beersIn, cellarLists } from "../../../../static/src/ui/cellar/lists.ts";
import { ago, container, FIRKIN, filled, known } from "../brewery.ts";

const listed = (...containers: ReturnType<typeof container>[]) =>
  cellarLists(allFull(containers, known), null);

const numbers = (fulls: { standing: { number: string } }[]) =>
  fulls.map(({ standing }) => standing.number);

test("an empty container and one that is out are not in the cellar", () => {
  const empty = container("1", FIRKIN);
  const out = container("2", FIRKIN, filled(10, "2026-12-30"), [
    ago(1),
    "sent",
    { customer: "c1", due_on: null },
  ]);
  assert.equal(allFull([empty, out], known).length, 0);
});

test("what is ready stands by what is left of its best before, then by number", () => {
  const { ready } = listed(
    container("10", FIRKIN, filled(10, "2026-12-30")),
    container("9", FIRKIN, filled(10, "2026-12-30")),
    container("11", FIRKIN, filled(10, "2026-12-20")),
    container("12", FIRKIN, filled(10, null)),
  );
  assert.deepEqual(numbers(ready), ["11", "9", "10", "12"]);
});

test("what is still conditioning stands by when it will be ready", () => {
  const { later, ready } = listed(
    container("1", FIRKIN, filled(2, "2026-12-30")),
    container("2", FIRKIN, filled(10, "2026-12-30", "g319")),
    container("3", FIRKIN, filled(6, "2026-12-30")),
  );
  assert.deepEqual(numbers(ready), []);
  assert.deepEqual(numbers(later), ["3", "2", "1"]);
});

test("what is held or past comes before what is near its end, and stands nowhere else", () => {
  const lists = listed(
    container("1", FIRKIN, filled(40, "2026-11-27")),
    container("2", FIRKIN, filled(50, "2026-11-24")),
    container("3", FIRKIN, filled(10, "2026-12-30"), [ago(1), "set_aside", { why: "hazy" }]),
    container("4", FIRKIN, filled(10, "2026-12-03")),
  );
  assert.deepEqual(numbers(lists.look), ["3", "2", "1"]);
  assert.deepEqual(numbers(lists.ready), ["4"]);
});

test("near its end on the stillage is being dealt with", () => {
  const { look, stillage } = listed(
    container("1", FIRKIN, filled(40, "2026-11-27"), [ago(1), "stillaged", {}]),
  );
  assert.deepEqual(numbers(look), []);
  assert.deepEqual(numbers(stillage), ["1"]);
});

test("one that has been on sale too long is to be looked at", () => {
  const { look } = listed(container("1", FIRKIN, filled(20, "2026-12-30"), [ago(4), "tapped", {}]));
  assert.deepEqual(numbers(look), ["1"]);
});

test("an open question about the beer in it is to be looked at", () => {
  const { look } = listed(
    container("1", FIRKIN, filled(10, "2026-12-30"), filled(10, "2026-12-30", "g319")),
  );
  assert.deepEqual(numbers(look), ["1"]);
});

test("one beer can be chosen, and each beer says how many there are", () => {
  const fulls = allFull(
    [
      container("1", FIRKIN, filled(20, "2026-12-30")),
      container("2", FIRKIN, filled(20, "2026-12-30", "g319")),
      container("3", FIRKIN, filled(20, "2026-12-30", "g319")),
    ],
    known,
  );
  assert.deepEqual(beersIn(fulls, known), [
    { beer: "b2", name: "Marram Stout", count: 2 },
    { beer: "b1", name: "Oystercatcher", count: 1 },
  ]);
  assert.deepEqual(numbers(cellarLists(fulls, "b1").ready), ["1"]);
});

test("beer from a gyle not known here is listed all the same", () => {
  const fulls = allFull([container("1", FIRKIN, filled(20, "2026-12-30", "gone"))], known);
  assert.deepEqual(beersIn(fulls, known), [{ beer: "", name: "Beer not known here", count: 1 }]);
  assert.deepEqual(numbers(cellarLists(fulls, "").ready), ["1"]);
});
