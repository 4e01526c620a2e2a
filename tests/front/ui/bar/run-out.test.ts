// When a cask on sale runs out, and the next one of its beer. Now is a Wednesday at noon.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import type { OwnEntry } from "../../../../static/src/store/book.ts";
import { nextWords, runsOutWords } from "../../../../static/src/ui/bar/ending-words.ts";
import { barLists } from "../../../../static/src/ui/bar/lists.ts";
import { dipsOf, endings, firstJob } from "../../../../static/src/ui/bar/run-out.ts";
import { allFull } from "../../../../static/src/ui/cellar/lists.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW, type Told } from "../brewery.ts";

const ready = filled(20, "2026-12-30");
const dipped = (left_ml: number, hours = 1): Told => [ago(0, hours), "dipped", { left_ml }];
const onSale = (left_ml: number): Standing =>
  container("88", FIRKIN, ready, [ago(1, 12), "tapped", {}], dipped(left_ml));

const own = (at: string, left_ml: number, more: Partial<OwnEntry> = {}): OwnEntry =>
  ({
    entry: { id: at, kind: "dipped", subject: "88", happened_at: at, facts: { left_ml } },
    where: "brewery",
    undone: false,
    ...more,
  }) as unknown as OwnEntry;

const end = (cellar: Standing[], entries: OwnEntry[] = []) => {
  const { onSale: served } = barLists(cellar, known);
  const found = endings(served, allFull(cellar, known), entries, known, {});
  const ending = found.get("88");
  assert.ok(ending);
  return ending;
};

const dips = (standing: Standing, entries: OwnEntry[]) => {
  const [served] = barLists([standing], known).onSale;
  assert.ok(served);
  return dipsOf(served, entries).map(({ left_ml }) => left_ml);
};

test("full at tapping, this phone's dips, the last as it stands", () => {
  assert.deepEqual(dips(onSale(20_000), [own(ago(0, 12), 30_000)]), [40_900, 30_000, 20_000]);
});

test("an undone dip, one from before tapping and one that rises again do not count", () => {
  const entries = [
    own(ago(0, 12), 30_000, { undone: true }),
    own(ago(3), 39_000),
    own(ago(0, 6), 15_000),
  ];
  assert.deepEqual(dips(onSale(20_000), entries), [40_900, 20_000]);
});

test("before the first dip there is no pace", () => {
  assert.deepEqual(dips(container("88", FIRKIN, ready, [ago(1), "tapped", {}]), []), []);
});

test("it says when it runs out, and by when to vent which one", () => {
  const ending = end([onSale(35_000), container("90", FIRKIN, ready)]);
  assert.match(runsOutWords(ending, NOW), /^Runs out about .* at this pace\.$/);
  assert.match(nextWords(ending, NOW, false), /^Vent the next one, 90, by /);
  assert.equal(firstJob(ending)?.step, "stillage");
});

test("one on the stillage comes before one with a shorter life in the cold room", () => {
  const up = container("91", FIRKIN, ready, [ago(2), "stillaged", {}]);
  const ending = end([onSale(35_000), container("90", FIRKIN, filled(20, "2026-12-20")), up]);
  assert.equal(ending.next?.number, "91");
});

test("another beer is no next one, and then it says so", () => {
  const ending = end([onSale(35_000), container("90", FIRKIN, filled(20, null, "g319"))]);
  assert.equal(ending.next, null);
  assert.match(nextWords(ending, NOW, false), /none of it is left in the cellar\.$/);
});

test("too late, it says from when the next one can be sold", () => {
  const ending = end([onSale(3_000), container("90", FIRKIN, ready)]);
  assert.match(nextWords(ending, NOW, false), /at once.* It can be sold from .* only\.$/);
});

test("empty by its pace, it asks for a dip", () => {
  assert.match(runsOutWords(end([onSale(1_000)]), NOW), /^By its pace it is empty now\./);
});

test("a keg runs out as well, and nothing is vented for it", () => {
  const keg = container(
    "88",
    KEG,
    filled(20, null, "g318", 30_000),
    [ago(1, 12), "tapped", {}],
    dipped(20_000),
  );
  const ending = end([keg, container("90", FIRKIN, ready)]);
  assert.equal(ending.next, null);
  assert.equal(nextWords(ending, NOW, true), "");
});
