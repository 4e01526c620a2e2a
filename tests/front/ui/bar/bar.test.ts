// What the Bar lists, says and offers.

import assert from "node:assert/strict";
import { test } from "node:test";
import { deedsFor, deedWords } from "../../../../static/src/ui/bar/deeds.ts";
import { barLists, type Served } from "../../../../static/src/ui/bar/lists.ts";
import { pintsAsMl, wholePints } from "../../../../static/src/ui/bar/pints.ts";
import { barWords } from "../../../../static/src/ui/bar/reasons.ts";
import { ago, container, FIRKIN, filled, KEG, known, type Told } from "../brewery.ts";

const ready = filled(20, "2026-12-30");
const lists = (...containers: ReturnType<typeof container>[]) => barLists(containers, known);
const numbers = (served: Served[]) => served.map(({ standing }) => standing.number);
const one = (...told: Told[]): Served => {
  const found = Object.values(lists(container("88", ...told))).flat()[0];
  assert.ok(found);
  return found;
};
/** As on the screen, with plain spaces. */
const words = (served: Served) => barWords(served, known).replaceAll("\u00a0", " ");

test("only what lies on the stillage or is on sale is listed, each in one list", () => {
  const all = lists(
    container("1", FIRKIN, ready),
    container("2", FIRKIN, ready, [ago(1), "stillaged", {}]),
    container("3", FIRKIN, ready, [ago(1), "vented", { spile: "soft" }]),
    container("4", FIRKIN, ready, [ago(1), "tapped", {}]),
    container("5", FIRKIN, ready, [ago(1), "tapped", {}], [ago(0, 2), "emptied", {}]),
  );
  assert.deepEqual(numbers(all.waiting), ["2"]);
  assert.deepEqual(numbers(all.working), ["3"]);
  assert.deepEqual(numbers(all.onSale), ["4"]);
});

test("what has to come off first, and what has worked longest, stand first", () => {
  const all = lists(
    container("1", FIRKIN, ready, [ago(0, 5), "tapped", {}]),
    container("2", FIRKIN, ready, [ago(2), "tapped", {}]),
    container("3", FIRKIN, ready, [ago(0, 3), "vented", { spile: "soft" }]),
    container("4", FIRKIN, ready, [ago(0, 9), "vented", { spile: "hard" }]),
  );
  assert.deepEqual(numbers(all.onSale), ["2", "1"]);
  assert.deepEqual(numbers(all.working), ["4", "3"]);
});

test("on sale says how long, which spile, how much by the last dip, and until when", () => {
  const served = one(
    FIRKIN,
    ready,
    [ago(2), "vented", { spile: "hard" }],
    [ago(1, 7), "tapped", {}],
    [ago(0, 3), "dipped", { left_ml: 22000 }],
  );
  assert.equal(
    words(served),
    "On sale 31 h, hard spile in. 22 L, 38 pints left, dipped 3 h ago. Off by Fri 05:00.",
  );
});

test("tapped ahead of the sale it was picked for, it says so and is off three days after that", () => {
  const tomorrow: Told = [ago(1), "planned", { sale_at: ago(-1) }];
  const says = words(one(FIRKIN, ready, tomorrow, [ago(0, 2), "tapped", {}]));
  assert.match(says, /^Tapped 2 h ago for Thu 12:00\. .* Off by Sun 12:00\.$/);
});

test("before the first dip the fill is all that is known", () => {
  assert.match(
    words(one(FIRKIN, ready, [ago(1), "tapped", {}])),
    /Not dipped yet; 40\.9 L, 71 pints when filled\./,
  );
});

test("past its days on sale it says since when", () => {
  assert.match(
    words(one(FIRKIN, ready, [ago(4), "tapped", {}])),
    /Should be off since Tue 12:00\.$/,
  );
});

test("past its best before that counts more", () => {
  assert.match(
    words(one(FIRKIN, filled(50, "2026-11-24"), [ago(1), "tapped", {}])),
    /Past best before, 24 Nov: take it off\.$/,
  );
});

test("working says with what and how long, and that it is still conditioning", () => {
  assert.equal(
    words(one(FIRKIN, filled(5, null), [ago(0, 4), "vented", { spile: "soft" }])),
    "Vented 4 h ago, soft spile in. Conditioning until Fri 12:00. Can be sold from Fri 12:00.",
  );
  assert.match(
    words(one(FIRKIN, ready, [ago(2, 1), "stillaged", {}])),
    /^On the stillage since Mon 11:00, not vented yet\. Can be sold from \w{3} \d\d:\d\d\.$/,
  );
});

test("a spile is changed for the other one", () => {
  const vented = (spile: string): Told => [ago(1), "vented", { spile }];
  assert.deepEqual(deedsFor(one(FIRKIN, ready, [ago(1), "stillaged", {}])), ["soft", "hard"]);
  assert.deepEqual(deedsFor(one(FIRKIN, ready, vented("soft"))), ["tap", "hard"]);
  assert.deepEqual(deedsFor(one(FIRKIN, ready, vented("hard"))), ["tap", "soft"]);
  assert.deepEqual(deedsFor(one(FIRKIN, ready, vented("hard"), [ago(0, 2), "tapped", {}])), [
    "dip",
    "soft",
    "stoop",
    "off",
  ]);
  const stooped: Told = [ago(0, 1), "stooped", {}];
  const tilted = one(FIRKIN, ready, vented("hard"), [ago(0, 2), "tapped", {}], stooped);
  assert.deepEqual(deedsFor(tilted), ["dip", "soft", "off"]);
  assert.match(words(tilted), /hard spile in, tilted\./);
});

test("a keg has no spile", () => {
  const keg = one(KEG, filled(20, null, "g318", 29500), [ago(1), "tapped", {}]);
  assert.deepEqual(deedsFor(keg), ["dip", "off"]);
  assert.doesNotMatch(words(keg), /spile/);
});

test("venting and changing the spile are called what they are", () => {
  assert.equal(
    deedWords("soft", one(FIRKIN, ready, [ago(1), "stillaged", {}])),
    "Vent, soft spile",
  );
  assert.equal(deedWords("soft", one(FIRKIN, ready, [ago(1), "tapped", {}])), "Soft spile");
});

test("a firkin holds 72 pints, and pints typed become millilitres", () => {
  assert.equal(wholePints(40915), 72);
  assert.equal(wholePints(567), 0);
  assert.equal(wholePints(568), 1); // a pint typed, as the ledger keeps it
  assert.equal(pintsAsMl("72"), 40915);
  assert.equal(pintsAsMl("0,5"), 284);
  assert.equal(pintsAsMl("x"), null);
  assert.equal(pintsAsMl(""), null);
});
