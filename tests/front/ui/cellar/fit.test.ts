// The Cellar by the rule: stages, order, sentences, and that a full cellar is no wait.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import { fitOf, isEstimate } from "../../../../static/src/ui/cellar/fit.ts";
import { allFull, cellarLists } from "../../../../static/src/ui/cellar/lists.ts";
import { fullReason } from "../../../../static/src/ui/cellar/reasons.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW } from "../brewery.ts";

const listed = (containers: Standing[], settings = {}) =>
  cellarLists(allFull(containers, known, settings), null);

const sentence = (standing: Standing, settings = {}) => {
  const [full] = allFull([standing], known, settings);
  assert.ok(full);
  return fullReason(full, known);
};

test("a ready cask says from when it can be sold if it is set up now", () => {
  assert.match(
    sentence(container("104", FIRKIN, filled(20, "2026-12-18"))),
    /^Ready since 12 Nov, best before 18 Dec, can be sold from .*\d\d:\d\d\. Firkin\.$/,
  );
});

test("a keg says no such thing", () => {
  const keg = container("K12", KEG, filled(20, "2026-12-18", "g318", 30_000));
  assert.doesNotMatch(sentence(keg), /can be sold/);
});

test("on the stillage, what can be sold first stands first", () => {
  const vented = container(
    "2",
    FIRKIN,
    filled(20, null),
    [ago(1), "stillaged", {}],
    [ago(0, 12), "vented", { spile: "soft" }],
  );
  const up = container("1", FIRKIN, filled(20, null), [ago(3), "stillaged", {}]);
  const { stillage } = listed([up, vented]);
  const at = stillage.map((full) => full.fit()?.result.ready_from_at ?? "");
  assert.deepEqual(at, [...at].sort());
});

test("a brewery's own conditioning rate makes the time an estimate, and is heeded", () => {
  const cask = container("104", FIRKIN, filled(5, null));
  assert.match(sentence(cask, { conditioning_q10: 2 }), /^Conditioning until about /);
  const fit = fitOf(cask, known, { conditioning_q10: 2 });
  assert.ok(fit && isEstimate(fit, "conditioned_from_at"));
});

test("what was noted of a time that cannot be leaves the sentence without the rule", () => {
  const broken = container("104", FIRKIN, filled(20, null));
  const serving = { stillaged: null, vented: null, tapped: null, stooped: null };
  const tapped = { since: ago(30), entry: "e", by: "", inferred: false };
  assert.equal(fitOf({ ...broken, serving: { ...serving, tapped } }, known, {}), null);
});

test("an answer is kept while nothing changes", () => {
  const cask = container("104", FIRKIN, filled(20, null));
  const settings = {};
  assert.equal(fitOf(cask, known, settings), fitOf(cask, known, settings));
  assert.notEqual(
    fitOf(cask, known, settings),
    fitOf(cask, { ...known, now: ago(0, -1) }, settings),
  );
  assert.ok(NOW < ago(0, -1));
});
