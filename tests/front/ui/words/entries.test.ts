// Every kind of entry and every question has words of its own, with nothing left blank in them.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  CONTAINER_KINDS,
  CORRECTION_KINDS,
  type Facts,
  HAPPENINGS,
  RECORD_KINDS,
} from "../../../../static/src/domain/entries.ts";
import { doneWords } from "../../../../static/src/ui/words/done.ts";
import { entryWords } from "../../../../static/src/ui/words/entries.ts";
import { known } from "../brewery.ts";

const KINDS = [
  ...CONTAINER_KINDS,
  ...CORRECTION_KINDS,
  ...RECORD_KINDS,
  ...(Object.keys(HAPPENINGS) as (keyof typeof HAPPENINGS)[]),
];

/** The least that each kind must carry. */
const LEAST: { readonly [kind: string]: Facts } = {
  registered: { kind: "firkin", capacity_ml: 40_915 },
  inspected: { passed: false },
  filled: { gyle: "g318", volume_ml: 40_915, best_before: null },
  dosed: { what: "isinglass", amount_ml: 426 },
  moved: { place: "cold" },
  vented: { spile: "soft" },
  dipped: { left_ml: 20_000 },
  planned: { sale_at: null },
  temperature: { series: [["2026-11-25T08:10:00.000Z", 118]] },
  solution_used: { uses: 1 },
  sent: { customer: "c1", due_on: null },
  set_aside: { why: "leaks" },
  noted: { words: "shive replaced" },
  reported: { where: "Mill Lane" },
  told: { customer: "c1", says: "empty" },
  voided: { target: "e1" },
  renumbered: { target: "e1", to: "118" },
  settled: { query: "unwashed:e1", way: "right" },
};

test("every kind has words, with the least that it must carry", () => {
  for (const kind of KINDS) {
    const words = entryWords({ kind, facts: LEAST[kind] ?? {} }, known);
    assert.match(words, /^[A-Z]/, kind);
    assert.doesNotMatch(words, /undefined|null|NaN|Something/, kind);
    assert.notEqual(doneWords(kind), "Something was noted", kind);
  }
});

test("an entry of a kind that this version does not know is told all the same", () => {
  assert.equal(entryWords({ kind: "sung_to", facts: {} }, known), "Something was noted");
});

test("facts are told with their names and units", () => {
  const told = (kind: string, facts: Facts) =>
    entryWords({ kind, facts }, known).replaceAll("\u00a0", " ");
  assert.equal(
    told("filled", { gyle: "g318", volume_ml: 40_915, best_before: "2026-12-18" }),
    "Filled with 40.9 L of Oystercatcher, gyle 318, best before 18 Dec",
  );
  assert.equal(
    told("returned", { customer: "c1", ullage_ml: 4_000, place: "cold" }),
    "Came back from Lantern with 4 L still in it, to the cold room",
  );
  assert.equal(
    told("checked", { temp_decidegc: 120, clarity: "bright" }),
    "Checked: 12 °C, clarity bright",
  );
  assert.equal(
    told("dosed", { what: "isinglass", amount_ml: 426, lot: "l1" }),
    "Added 426 mL of isinglass IF2041",
  );
  assert.equal(
    told("dosed", { what: "hops", amount_g: 20, lot: "elsewhere" }),
    "Added 20 g of hops",
  );
  assert.equal(told("moved", { place: "nowhere" }), "Moved to a place not known here");
});
