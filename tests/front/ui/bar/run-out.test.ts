// When a cask on sale runs out, and the next one of its beer. Now is a Wednesday at noon.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import { nextWords, runsOutWords } from "../../../../static/src/ui/bar/ending-words.ts";
import { barLists } from "../../../../static/src/ui/bar/lists.ts";
import { dipsOf, endings, firstJob } from "../../../../static/src/ui/bar/run-out.ts";
import { allFull } from "../../../../static/src/ui/cellar/lists.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW, type Told } from "../brewery.ts";

const ready = filled(20, "2026-12-30");
const dipped = (left_ml: number, hours = 1): Told => [ago(0, hours), "dipped", { left_ml }];
const onSale = (left_ml: number, ...earlier: Told[]): Standing =>
  container("88", FIRKIN, ready, [ago(1, 12), "tapped", {}], ...earlier, dipped(left_ml));

const end = (cellar: Standing[]) => {
  const { onSale: served } = barLists(cellar, known);
  const found = endings(served, allFull(cellar, known), known, {});
  const ending = found.get("88");
  assert.ok(ending);
  return ending;
};

const dips = (standing: Standing) => {
  const [served] = barLists([standing], known).onSale;
  assert.ok(served);
  return dipsOf(served).map(({ left_ml }) => left_ml);
};

test("full at tapping, every dip since, whoever made it, and the last as it stands", () => {
  assert.deepEqual(dips(onSale(20_000, dipped(30_000, 12))), [40_900, 30_000, 20_000]);
});

test("a dip from before tapping and one that rises again do not count", () => {
  const before: Told = [ago(3), "dipped", { left_ml: 39_000 }];
  const cask = container("88", FIRKIN, ready, before, [ago(1, 12), "tapped", {}], dipped(20_000));
  assert.deepEqual(dips(cask), [40_900, 20_000]);
  assert.deepEqual(dips(onSale(20_000, dipped(15_000, 6))), [40_900, 20_000]);
});

test("a cask that goes faster lately runs out by its latest pace", () => {
  const even = end([onSale(20_000)]).worked.result.soonest_at ?? "";
  const faster = end([onSale(20_000, dipped(35_000, 6))]).worked.result.soonest_at ?? "";
  assert.ok(faster < even);
});

test("before the first dip only the fill is known, and there is no pace", () => {
  assert.deepEqual(dips(container("88", FIRKIN, ready, [ago(1), "tapped", {}])), [40_900]);
});

test("it says when it runs out, and by when to vent which one", () => {
  const fresh = container("88", FIRKIN, ready, [ago(0, 12), "tapped", {}], dipped(34_000));
  const ending = end([fresh, container("90", FIRKIN, ready)]);
  assert.match(
    runsOutWords(ending, NOW),
    /^Runs out about Fri 14:29 by the pace of a few hours only/,
  );
  assert.match(nextWords(ending, NOW, false), /^Vent the next one, 90, by /);
  assert.equal(firstJob(ending)?.step, "stillage");
});

const NOON_TO_ELEVEN = Array.from({ length: 7 }, (_, day) => [
  day * 1440 + 720,
  day * 1440 + 1380,
]).flat();

test("with the bar's hours it runs out while beer is drawn, and nights are not spoken of", () => {
  // Full at Tuesday's opening, 12 L drawn by Wednesday's: 12 L in eleven hours, 24 L in 22 more.
  const cask = container(
    "88",
    FIRKIN,
    filled(20, null, "g318", 36_000),
    [ago(1), "tapped", {}],
    dipped(24_000, 0),
  );
  const { onSale: served } = barLists([cask], known);
  const own = { bar_hours: NOON_TO_ELEVEN, sediment_firkin_ml: 0 };
  const ending = endings(served, [], known, own).get("88");
  assert.ok(ending);
  assert.doesNotMatch(runsOutWords(ending, NOW), /nights/);
  const { soonest_at, next_wanted_at } = ending.worked.result;
  assert.ok(soonest_at && soonest_at > ago(-1) && soonest_at <= "2026-11-26T23:00:00.000Z");
  assert.equal(next_wanted_at, soonest_at);
});

test("what has to be off before it runs out is followed by then", () => {
  const ending = end([onSale(35_000), container("90", FIRKIN, ready)]);
  assert.match(
    runsOutWords(ending, NOW),
    /^Would run out about .* at this pace, nights counted too: it has to be off before that\.$/,
  );
  assert.equal(ending.worked.result.gone_at, ago(-1, -12));
  assert.equal(ending.next?.sale_at, ago(-1, -12));
});

test("one on the stillage comes before one with a shorter life in the cold room", () => {
  const up = container("91", FIRKIN, ready, [ago(2), "stillaged", {}]);
  const ending = end([onSale(35_000), container("90", FIRKIN, filled(20, "2026-12-20")), up]);
  assert.equal(ending.next?.number, "91");
});

test("a beer that throws more sediment runs out sooner", () => {
  const { onSale: served } = barLists([onSale(20_000)], known);
  const ends = (fields: object) => {
    const beers = new Map([["b1", { fields, set_by: {} }]]);
    const knowing = { ...known, beers } as typeof known;
    return endings(served, [], knowing, {}).get("88")?.worked.result.soonest_at ?? "";
  };
  assert.ok(ends({ sediment_firkin_ml: 4000 }) < ends({}));
  assert.equal(ends({ sediment_firkin_ml: 1700 }), ends({}));
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
  assert.match(
    runsOutWords(end([onSale(1_000)]), NOW),
    /^At the pace of its last dips it is empty now\./,
  );
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
