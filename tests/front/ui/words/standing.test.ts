// How a container stands, in the sentence that decides about it now.

import assert from "node:assert/strict";
import { test } from "node:test";
import { standingWords } from "../../../../static/src/ui/words/standing.ts";
import { ago, container, FIRKIN, filled, known, type Told } from "../brewery.ts";

const said = (...told: Told[]): string =>
  standingWords(container("117", ...told), known).replaceAll("\u00a0", " ");

test("from racking to ready to past its day", () => {
  assert.equal(
    said(FIRKIN, filled(1, "2027-01-05")),
    "racked Tue 12:00, conditioning until Tue 12:00",
  );
  assert.equal(said(FIRKIN, filled(9, "2027-01-05")), "ready since Mon 12:00, racked 16 Nov");
  assert.equal(said(FIRKIN, filled(60, "2026-11-20")), "past its best-before day, 20 Nov");
});

test("on the stillage, working, and on sale", () => {
  const cask = [FIRKIN, filled(9, "2027-01-05"), [ago(1), "stillaged", {}]] as const;
  const vented: Told = [ago(0, 4), "vented", { spile: "soft" }];
  assert.equal(said(...cask), "on the stillage since Tue 12:00");
  assert.equal(said(...cask, vented), "working since 08:00, soft spile in");
  assert.equal(
    said(...cask, vented, [ago(0, 2), "tapped", {}], [ago(0, 1), "dipped", { left_ml: 22_000 }]),
    "on sale 2 h, 22 L left, off by Sat 10:00",
  );
});

test("away, late, missing and set aside come before what is in it", () => {
  const sent: Told = [ago(50), "sent", { customer: "c1", due_on: "2026-11-23" }];
  assert.equal(
    said(FIRKIN, filled(60, null), sent),
    "Out at Lantern since 6 Oct, due back Mon: 2 days late",
  );
  assert.equal(
    said(FIRKIN, [ago(20), "missing", { why: "not on the count" }]),
    "Missing since 5 Nov: not on the count",
  );
  assert.equal(
    said(FIRKIN, [ago(0, 1), "set_aside", { why: "leaks" }]),
    "Set aside since 11:00: leaks",
  );
});

test("empty ones say how clean they are; of an unknown one nothing is made up", () => {
  assert.equal(said(FIRKIN, [ago(1), "washed", {}]), "Washed Tue 12:00");
  assert.equal(said(FIRKIN, [ago(1), "returned", {}]), "Empty and dirty since Tue 12:00");
  assert.equal(said(), "Nothing is noted of it yet");
});
