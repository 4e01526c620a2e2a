// Answers to the questions of a container's page, in the units of the ledger.

import assert from "node:assert/strict";
import { test } from "node:test";
import { ASKED, readAnswer } from "../../../../static/src/ui/container/asked.ts";
import { ago, container, KEG } from "../brewery.ts";

test("a marked working pressure is kept in millibar, and stands in the form again", () => {
  assert.deepEqual(readAnswer(ASKED.limit, "3.5"), { value: 3500 });
  assert.deepEqual(readAnswer(ASKED.limit, " 4,1 "), { value: 4100 });
  assert.deepEqual(readAnswer(ASKED.limit, ""), { value: null });
  const facts = { kind: "keg_30", capacity_ml: 30_000, limit_millibar: 3500 };
  const keg = container("K1", KEG, [ago(1), "registered", facts]);
  assert.equal(ASKED.limit.first(keg), "3.5");
});

test("a pressure that no container is marked with is refused with its range", () => {
  for (const text of ["0", "0.05", "11", "-1", "3 bar", "NaN"]) {
    assert.deepEqual(readAnswer(ASKED.limit, text), { fault: "Bar from 0.1 to 10, as 3.5." });
  }
});
