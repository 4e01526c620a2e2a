// Coming back: what is recorded, and what is said before.

import assert from "node:assert/strict";
import { test } from "node:test";
import { backDrafts, backRemarks } from "../../../../static/src/ui/out/back.ts";
import { ago, container, FIRKIN, filled, known, type Told } from "../brewery.ts";

const sent = (days: number, due_on: string | null): Told => [
  ago(days),
  "sent",
  { customer: "c1", due_on },
];
const asNew = { kind: "pin", capacity_ml: 20457 };
const back = { place: "yard", asNew, ullage_ml: null };
const said = (...told: Told[]) =>
  backRemarks(container("117", ...told), known).map(({ says }) => says.replaceAll("\u00a0", " "));

test("what comes back carries where it is put and from whom", () => {
  const standing = container("117", FIRKIN, sent(9, null));
  assert.deepEqual(backDrafts("117", standing, back), [
    { kind: "returned", subject: "117", facts: { place: "yard", customer: "c1" } },
  ]);
});

test("beer still in it is recorded with it", () => {
  const [draft] = backDrafts("117", container("117", FIRKIN), { ...back, ullage_ml: 4500 });
  assert.equal(draft?.facts["ullage_ml"], 4500);
});

test("a number not on record is entered first, in the same tap", () => {
  assert.deepEqual(
    backDrafts("777", null, back).map(({ kind }) => kind),
    ["registered", "returned"],
  );
  assert.deepEqual(
    backDrafts("777", null, { ...back, asNew: null }).map(({ kind }) => kind),
    ["returned"],
  );
});

test("from whom, for how long, how late and with which beer", () => {
  assert.deepEqual(said(FIRKIN, filled(40, null), sent(30, "2026-11-21")), [
    "From Lantern, out 30 days since 26 Oct.",
    "4 days late.",
    "With Oystercatcher, gyle 318.",
  ]);
});

test("missing while out is said, since now it is found", () => {
  assert.deepEqual(
    said(FIRKIN, sent(30, null), [ago(9), "missing", {}]).at(-1),
    "Was down as missing.",
  );
});

test("one that was not out, came back already, or is scrapped is questioned", () => {
  assert.match(said(FIRKIN)[0] ?? "", /^Not down as out\. /);
  assert.equal(
    said(FIRKIN, sent(30, null), [ago(0, 2), "returned", {}])[0],
    "Came back already at 10:00.",
  );
  assert.equal(
    said(FIRKIN, [ago(40), "scrapped", {}])[0],
    "Scrapped 16 Oct. Is this the right number?",
  );
});

test("of a number that nothing is known of nothing is said", () => {
  assert.deepEqual(backRemarks(null, known), []);
});
