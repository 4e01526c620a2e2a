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

test("ready says since when, and best before", () => {
  assert.equal(
    fullReason(full(filled(20, "2026-12-18")), known),
    "Ready since 12 Nov, best before 18 Dec. Firkin.",
  );
});

test("ready since today says the hour", () => {
  const [, kind, facts] = filled(7, null);
  assert.match(fullReason(full([ago(7, 2), kind, facts]), known), /^Ready since 10:00, /);
});

test("conditioning says until when, to the hour", () => {
  assert.equal(
    fullReason(full(filled(5, null)), known),
    "Conditioning until Fri 12:00, no best-before day, racked 20 Nov. Firkin.",
  );
});

test("the place is said where it is known", () => {
  assert.match(
    fullReason(full(filled(20, null), [ago(1), "moved", { place: "cold" }]), known),
    /^Ready since .*\. Firkin, the cold room\.$/,
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
    "Best before in 2 days, 27 Nov, moved 2 times. Firkin.",
  );
});

test("the best-before day itself is still good", () => {
  assert.equal(
    fullReason(full(filled(40, "2026-11-25")), known),
    "Best before today, 25 Nov. Firkin.",
  );
});

test("past says since when", () => {
  assert.equal(
    fullReason(full(filled(40, "2026-11-24")), known),
    "Past best before, which was yesterday, 24 Nov. Firkin.",
  );
});

test("on sale too long says when it should have been off", () => {
  assert.equal(
    fullReason(full(filled(20, null), [ago(4), "tapped", {}]), known),
    "On sale too long: should have been off by Tue 12:00. Firkin.",
  );
});

test("held says why", () => {
  assert.equal(
    fullReason(full(filled(20, null), [ago(1), "set_aside", { why: "hazy" }]), known),
    "Set aside since Tue 12:00: hazy. Firkin.",
  );
});

test("a question is asked as it is, with its own full stop", () => {
  assert.match(
    fullReason(full(filled(20, null), filled(20, null, "g319")), known),
    /^Filled twice on one day: .* Which is in it\? Firkin\.$/,
  );
});
