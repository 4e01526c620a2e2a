// Places to choose from.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Place } from "../../../../static/src/domain/records.ts";
import { placesFor, placesToMoveTo } from "../../../../static/src/ui/cellar/places.ts";

const place = (name: string, role: "store" | "yard", more: object = {}): Place => ({
  fields: { name, role, ...more },
  set_by: {},
  temperatures: [],
});
const places = new Map<string, Place>([
  ["w", place("Warm store", "store")],
  ["c", place("Cold room", "store")],
  ["y", place("Yard", "yard")],
  ["o", place("Old shed", "store", { retired: true })],
  ["n", { fields: {}, set_by: {}, temperatures: [] }],
]);

test("places in use are offered by name, those of a role where one is asked for", () => {
  assert.deepEqual(
    placesFor(places).map(({ id }) => id),
    ["c", "w", "y"],
  );
  assert.deepEqual(
    placesFor(places, "yard").map(({ id }) => id),
    ["y"],
  );
});

test("full beer is moved neither to where it is nor among the empties", () => {
  assert.deepEqual(
    placesToMoveTo(places, "c").map(({ id }) => id),
    ["w"],
  );
});
