// A plan: counted from the register, wishes first, and in words what is left and what it lacks.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  fillWords,
  leftWords,
  planOf,
  rowsHere,
  unknownWords,
  unmetWords,
  washedWords,
} from "../../../../static/src/ui/bench/racking-plan.ts";
import { ago, container, FIRKIN, filled, KEG, type Told } from "../brewery.ts";

const PIN: Told = [ago(400), "registered", { kind: "pin", capacity_ml: 20460 }];
const WASHED: Told = [ago(1), "washed", {}];
const casks = (n: number) =>
  Array.from({ length: n }, (_, i) => container(`${i + 1}`, FIRKIN, WASHED));
const plain = (words: string) => words.replaceAll("\u00a0", " ");

const DIRTY: Told[] = [filled(9, null), [ago(2), "emptied", {}]];

test("only what is empty, here and washed is clean; what was emptied is to wash", () => {
  const rows = rowsHere([
    ...casks(2),
    container("7", FIRKIN),
    container("8", FIRKIN, ...DIRTY),
    container("9", FIRKIN, filled(1, null)),
    container("10", FIRKIN, WASHED, [ago(0, 1), "set_aside", { why: "leaks" }]),
    container("K1", KEG, WASHED),
  ]);
  assert.deepEqual(
    rows.map(({ kind, clean, unknown, dirty }) => [kind, clean, unknown, dirty]),
    [
      ["firkin", 2, 1, 1],
      ["keg_30", 1, 0, 0],
    ],
  );
  assert.deepEqual(rows.map(washedWords), [
    "2 clean, 1 not washed on record, 1 to wash",
    "1 clean",
  ]);
});

test("what has no wash on record is planned with once somebody says that it is clean", () => {
  const marked: Told = [
    ago(400),
    "registered",
    { kind: "firkin", capacity_ml: 40915, limit_millibar: 2000 },
  ];
  const entered = [
    container("1", marked),
    container("2", FIRKIN),
    container("3", FIRKIN, ...DIRTY),
  ];
  const without = rowsHere(entered);
  assert.equal(
    fillWords(planOf(without, 90_000, 0, {}, {})),
    "Nothing can be filled as it stands.",
  );
  assert.equal(
    unknownWords(without, false),
    "2 containers here have no wash on record, and are not planned with.",
  );
  assert.equal(without[0]?.limit_millibar, null);
  const all = rowsHere(entered, true);
  assert.equal(plain(fillWords(planOf(all, 90_000, 0, {}, {}, true))), "2 firkins: 81.8 L in all.");
  assert.equal(
    unknownWords(all, true),
    "2 containers here have no wash on record: planned with all the same.",
  );
  assert.equal(all[0]?.limit_millibar, 2000);
  assert.equal(unknownWords(rowsHere(casks(2)), false), "");
});

test("40 L for a firkin is short by 0.9 L, and says so", () => {
  const plan = planOf(rowsHere(casks(3)), 40_000, 0, {}, {});
  assert.equal(fillWords(plan), "Nothing can be filled as it stands.");
  assert.equal(
    plain(leftWords(plan)),
    "40 L left over: short of a firkin of 40.9 L, with 0.9 L of air above it.",
  );
});

test("wishes come first, and one that cannot be met is named", () => {
  const rows = rowsHere([...casks(4), container("K1", KEG, WASHED)]);
  const wishes = { "keg_30 30000": 2 };
  const plan = planOf(rows, 160_000, 5000, wishes, {});
  assert.equal(plain(fillWords(plan)), "3 firkins, 1 × 30 L keg: 152.7 L in all.");
  assert.equal(unmetWords(plan), "Wished for and not possible: 1 × 30 L keg.");
});

test("with no clean container all of it is left", () => {
  const plan = planOf(rowsHere([]), 100_000, 0, {}, {});
  assert.equal(plain(leftWords(plan)), "100 L left over, and no clean container for it.");
});

test("three hundred firkins are planned as far as two hundred", () => {
  const plan = planOf(rowsHere(casks(300)), 10_000_000, 0, {}, {});
  assert.equal(plan.worked.result.containers, 200);
});

test("of two hundred at once a wished pin is not crowded out by firkins", () => {
  const pins = [container("901", PIN, WASHED), container("902", PIN, WASHED)];
  const rows = rowsHere([...casks(300), ...pins]);
  const plan = planOf(rows, 10_000_000, 0, { "pin 20460": 2 }, {});
  assert.equal(plan.worked.result.containers, 200);
  assert.equal(unmetWords(plan), "");
});
