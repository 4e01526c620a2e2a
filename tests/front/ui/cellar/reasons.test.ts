// Why a line stands where it does, in words and dates.

import assert from "node:assert/strict";
import { test } from "node:test";
import { asFull, type Full } from "../../../../static/src/ui/cellar/full.ts";
import { fullReason, fullTitle } from "../../../../static/src/ui/cellar/reasons.ts";
import { ago, container, FIRKIN, filled, known } from "../brewery.ts";

const full = (...told: Parameters<typeof container>[1][]): Full => {
  const found = asFull(container("104", FIRKIN, ...told), known);
  assert.ok(found);
  return found;
};

test("the title begins with the number", () => {
  assert.equal(fullTitle(full(filled(20, null)), known), "104 Oystercatcher");
});

test("ready says since when, best before and racked", () => {
  assert.equal(
    fullReason(full(filled(20, "2026-12-18")), known),
    "Firkin. Ready since 12 Nov, best before 18 Dec, racked 5 Nov.",
  );
});

test("conditioning says until when, to the hour", () => {
  assert.equal(
    fullReason(full(filled(5, null)), known),
    "Firkin. Conditioning until Fri 12:00, no best-before day, racked 20 Nov.",
  );
});

test("the place is said where it is known", () => {
  assert.match(
    fullReason(full(filled(20, null), [ago(1), "moved", { place: "cold" }]), known),
    /^Firkin, the cold room\. Ready since/,
  );
});

test("near best before says how many days are left and how often it was moved", () => {
  assert.equal(
    fullReason(
      full(
        filled(40, "2026-11-27"),
        [ago(3), "moved", { place: "cold" }],
        [ago(2), "moved", { place: "brewery" }],
      ),
      known,
    ),
    "Firkin. Best before in 2 days, 27 Nov, moved 2 times.",
  );
});

test("the best-before day itself is still good", () => {
  assert.equal(
    fullReason(full(filled(40, "2026-11-25")), known),
    "Firkin. Best before today, 25 Nov.",
  );
});

test("past says since when", () => {
  assert.equal(
    fullReason(full(filled(40, "2026-11-24")), known),
    "Firkin. Past best before, which was yesterday, 24 Nov.",
  );
});

test("on sale too long says when it should have been off", () => {
  assert.equal(
    fullReason(full(filled(20, null), [ago(4), "tapped", {}]), known),
    "Firkin. On sale too long: should have been off by Tue 12:00.",
  );
});

test("held says why", () => {
  assert.equal(
    fullReason(full(filled(20, null), [ago(1), "set_aside", { why: "hazy" }]), known),
    "Firkin. Set aside since Tue 12:00: hazy.",
  );
});

test("a question is asked as it is, with its own full stop", () => {
  assert.match(
    fullReason(full(filled(20, null), filled(20, null, "g319")), known),
    /^Firkin\. Filled twice on one day: .* Which is in it\?$/,
  );
});
