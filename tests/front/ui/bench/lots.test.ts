// Lots of finings and sugar: which one is noted with a dose, and how long it still lasts.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { LotFields } from "../../../../static/src/domain/record-fields.ts";
import type { Lot } from "../../../../static/src/domain/records.ts";
import { doseFacts } from "../../../../static/src/ui/bench/dose-facts.ts";
import type { DoseLine } from "../../../../static/src/ui/bench/doses.ts";
import {
  basisWords,
  isPast,
  lifeWords,
  liveLots,
  lotsInUse,
  lotsLine,
  NO_LOT,
} from "../../../../static/src/ui/bench/lots.ts";
import { ago, container, FIRKIN, filled, NOW, type Told } from "../brewery.ts";

const lot = (fields: Partial<LotFields> & { retired?: boolean }): Lot => ({
  fields: { what: "isinglass", ...fields },
  set_by: {},
});

const LOTS: ReadonlyMap<string, Lot> = new Map([
  ["old", lot({ name: "IF1", received_on: "2026-10-01", stored_temp_decidegc: 40 })],
  ["new", lot({ name: "IF2", received_on: "2026-11-20", stored_temp_decidegc: 130 })],
  ["gone", lot({ name: "IF0", received_on: "2026-11-24", retired: true })],
  ["sugar", lot({ what: "primings", name: "CS7" })],
]);

const dosed = (days: number, id: string): Told => [
  ago(days),
  "dosed",
  { what: "isinglass", amount_ml: 426, lot: id },
];
const cask = (...told: Told[]) => container("117", FIRKIN, filled(5, null), ...told);

const LINE: DoseLine = {
  what: "isinglass",
  label: "isinglass",
  unit: "mL",
  sizes: [{ kind: "firkin", volume_ml: 40_915, count: 1, limit_millibar: null }],
  each: [426],
  total: 426,
  note: "",
  missing: null,
  later: false,
  worked: [],
};

test("of each product the last received is taken, until one was used", () => {
  assert.deepEqual(lotsInUse(LOTS, {}, []), { isinglass: "new", primings: "sugar" });
  assert.equal(lotsInUse(LOTS, {}, [cask(dosed(2, "old"))]).isinglass, "old");
});

test("the last dose decides, whichever container it went into", () => {
  const two = [cask(dosed(1, "new")), cask(dosed(2, "old"))];
  assert.equal(lotsInUse(LOTS, {}, two).isinglass, "new");
});

test("what is used up, or known to no record, is not taken again", () => {
  const casks = [cask(dosed(3, "old"), dosed(2, "gone"), dosed(1, "unheard of"))];
  assert.equal(lotsInUse(LOTS, {}, casks).isinglass, "old");
});

test("a person's choice stands, none among them, until that lot is used up", () => {
  const casks = [cask(dosed(1, "new"))];
  assert.equal(lotsInUse(LOTS, { isinglass: "old" }, casks).isinglass, "old");
  assert.equal(lotsInUse(LOTS, { isinglass: NO_LOT }, casks).isinglass, undefined);
  assert.equal(lotsInUse(LOTS, { isinglass: "gone" }, casks).isinglass, "new");
});

test("with no lot on record nothing is noted and nothing is asked", () => {
  assert.deepEqual(lotsInUse(new Map(), {}, [cask()]), {});
  assert.deepEqual(doseFacts(LINE, 426, {}), { what: "isinglass", amount_ml: 426 });
  const around = { lots: new Map(), used: {}, now: NOW, own: {} };
  assert.equal(lotsLine([LINE], around), null);
});

test("a dose carries its lot", () => {
  assert.deepEqual(doseFacts(LINE, 426, { isinglass: "new" }), {
    what: "isinglass",
    amount_ml: 426,
    lot: "new",
  });
});

test("live lots stand with the last received first", () => {
  assert.deepEqual(
    liveLots(LOTS, "isinglass").map(([id]) => id),
    ["new", "old"],
  );
});

test("what is left of its life, and what that rests on", () => {
  // Murphy & Son, Function of Isinglass Finings: at least 6 months below 4 °C, 3 months at 13 °C.
  const words = (id: string) => lifeWords(LOTS.get(id) as Lot, NOW, {});
  assert.equal(words("old"), "127 days left");
  assert.equal(words("new"), "86 days left");
  assert.equal(words("sugar"), "");
  assert.equal(
    basisWords(LOTS.get("old") as Lot, NOW).replaceAll("\u00a0", " "),
    "received 1 Oct and kept at 4 °C at the warmest",
  );
});

test("past its life it says since when, at the pad too", () => {
  const past = lot({ name: "IF9", received_on: "2026-05-01", stored_temp_decidegc: 40 });
  assert.equal(isPast(past, NOW, {}), true);
  const lots = new Map([["past", past]]);
  const line = lotsLine([LINE], { lots, used: { isinglass: "past" }, now: NOW, own: {} });
  assert.deepEqual(line, { says: "Isinglass IF9 is past its life since 30 Oct.", tone: "look" });
});

test("at the pad the lots are named, and where none is noted it says so", () => {
  const around = { lots: LOTS, now: NOW, own: {} };
  const both = [LINE, { ...LINE, what: "primings" as const, label: "primings" }];
  const used = { isinglass: "old", primings: "sugar" };
  assert.equal(lotsLine(both, { ...around, used })?.says, "Lots: isinglass IF1 and primings CS7");
  assert.equal(lotsLine([LINE], { ...around, used: {} })?.says, "Lots: isinglass not noted");
});
