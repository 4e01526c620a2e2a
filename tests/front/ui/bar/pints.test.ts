// A bar counts in pints, the ledger in whole millilitres: nothing is lost between the two.

import assert from "node:assert/strict";
import { test } from "node:test";
import { pintsAsMl, wholePints } from "../../../../static/src/ui/bar/pints.ts";

test("pints that were typed come out as they went in", () => {
  const typed = Array.from({ length: 600 }, (_, pints) => pints);
  assert.deepEqual(
    typed.map((pints) => wholePints(pintsAsMl(String(pints)) ?? -1)),
    typed,
  );
});

test("half a pint is nobody's pint", () => {
  assert.equal(wholePints(pintsAsMl("39.5") ?? -1), 39);
});
