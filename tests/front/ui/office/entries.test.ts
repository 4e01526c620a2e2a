// Entries that the brewery did not take: what is said of them, and putting them right.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { MadeEntry } from "../../../../static/src/domain/entries.ts";
import type { OwnEntry } from "../../../../static/src/store/own-shown.ts";
import { readRepair, repairFields } from "../../../../static/src/ui/office/entries/repair.ts";
import { ownTitle, problemWords } from "../../../../static/src/ui/office/entries/said.ts";
import { known, NOW } from "../brewery.ts";

const own = (
  kind: MadeEntry["kind"],
  subject: string,
  facts: object,
  more: Partial<OwnEntry> = {},
): OwnEntry => ({
  entry: {
    id: "e1",
    device: "d",
    seq: 1,
    kind,
    subject,
    happened_at: NOW,
    person: "Ann",
    facts: { ...facts },
    rules: 1,
  },
  where: "attention",
  savedAt: NOW,
  undone: false,
  verdict: "refused",
  ...more,
});

const fill = own(
  "filled",
  "117",
  { gyle: "g318", volume_ml: 999_000, best_before: "2026-12-30" },
  {
    problem: {
      detail: "The entry could not be read",
      errors: [{ pointer: "#/facts/volume_ml", detail: "volume_ml must be less." }],
    },
  },
);

test("an entry about a container is titled by its number, a chase by its customer", () => {
  assert.match(ownTitle(fill, known), /^117: Filled with/);
  assert.equal(ownTitle(own("chased", "c1", { words: "soon" }), known), "Lantern: Chased: soon");
  assert.equal(ownTitle(own("beer", "b1", { name: "Mild" }), known), "Beer: Mild");
});

test("what the brewery said is told, of each fact or of the whole", () => {
  assert.equal(problemWords(fill), "The brewery could not take this. Litres: must be less.");
  const held = { ...fill, verdict: "held" as const, problem: { detail: "Not known here" } };
  assert.equal(
    problemWords(held),
    "The brewery keeps this for a person to look at. Not known here.",
  );
  const problem = { type: "/problems/put-aside", detail: "An owner has put it aside." };
  assert.equal(problemWords({ ...held, problem }), "An owner has put it aside.");
});

test("its facts can be typed anew in people's units, the fault beside its field", () => {
  assert.deepEqual(
    repairFields(fill).map(({ name, label, value, problem }) => [name, label, value, problem]),
    [
      ["subject", "Number", "117", null],
      ["volume_ml", "Litres", "999", "Must be less."],
      ["best_before", "Best before", "2026-12-30", null],
    ],
  );
});

test("what is put right goes back in whole units, and what has no field stays", () => {
  assert.deepEqual(readRepair(fill, { volume_ml: "40,9", subject: "f 118", best_before: "" }), {
    repair: {
      subject: "F118",
      facts: { gyle: "g318", volume_ml: 40_900, best_before: null },
    },
    faults: {},
  });
});

test("what cannot be read is told beside its field", () => {
  const { faults } = readRepair(fill, { volume_ml: "much", subject: "cask" });
  assert.match(faults["volume_ml"] ?? "", /figure/);
  assert.match(faults["subject"] ?? "", /number/);
});
