// Where a filled cask stands: where it is racked, and never where it stood when it was empty.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Place } from "../../../../static/src/domain/records.ts";
import { placeOfFilled } from "../../../../static/src/ui/bench/place.ts";

const place = (role: string, retired = false) =>
  ({ fields: { name: role, role, retired }, set_by: {} }) as unknown as Place;
const YARD = ["yard", place("yard")] as const;
const COLD = ["cold", place("store")] as const;
const RACKING = ["racking", place("store")] as const;

test("the place chosen on this phone", () => {
  assert.equal(placeOfFilled(new Map([YARD, COLD, RACKING]), "racking"), "racking");
});

test("with none chosen the only one where beer is kept", () => {
  assert.equal(placeOfFilled(new Map([YARD, COLD]), ""), "cold");
});

test("of several none is guessed", () => {
  assert.equal(placeOfFilled(new Map([YARD, COLD, RACKING]), ""), "brewery");
  assert.equal(placeOfFilled(new Map(), ""), "brewery");
});

test("one given up since is not used any more", () => {
  const old = ["racking", place("store", true)] as const;
  assert.equal(placeOfFilled(new Map([YARD, COLD, old]), "racking"), "cold");
});
