// What a brewery that has just begun is asked for.

import assert from "node:assert/strict";
import { test } from "node:test";
import { firstSteps } from "../../../../static/src/ui/office/first-steps.ts";

const none = new Map<string, unknown>();
const some = new Map<string, unknown>([["1", {}]]);
const titles = (heard: boolean, of: Parameters<typeof firstSteps>[1]) =>
  firstSteps(heard, of).map(({ path }) => path);

test("an empty brewery is asked for its lists, then a beer, and for the gyle of it last", () => {
  assert.deepEqual(titles(true, { beers: none, places: none, containers: none, gyles: none }), [
    "lists",
    "beers/new/office",
    "places",
    "containers/new",
    "gyles/new/bench",
  ]);
});

test("what is entered is not asked for, and nothing once all is", () => {
  assert.deepEqual(titles(true, { beers: some, places: some, containers: none, gyles: none }), [
    "lists",
    "containers/new",
    "gyles/new/bench",
  ]);
  assert.deepEqual(titles(true, { beers: some, places: some, containers: some, gyles: some }), []);
});

test("a phone that has not heard from the brewery asks for nothing", () => {
  assert.deepEqual(titles(false, { beers: none, places: none, containers: none, gyles: none }), []);
});
