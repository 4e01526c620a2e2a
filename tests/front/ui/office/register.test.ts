// The register: many numbers read at once, and the list searched and filtered.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readNumbers } from "../../../../static/src/ui/office/register/numbers.ts";
import { exactFirst, register, stateOf } from "../../../../static/src/ui/office/register/state.ts";
import { ago, container, FIRKIN, filled, KEG } from "../brewery.ts";

test("runs, single numbers and letters are read together, each once", () => {
  assert.deepEqual(readNumbers("117-119, 118; K 3\nk7 to k8,"), {
    numbers: ["117", "118", "119", "K3", "K7", "K8"],
    unread: [],
  });
});

test("a fleet of 250 is one run; a longer one than 300 is a slip", () => {
  assert.equal(readNumbers("1-250").numbers.length, 250);
  assert.deepEqual(readNumbers("1-301"), { numbers: [], unread: ["1-301"] });
});

test("a dash between letters and digits is part of the number", () => {
  assert.deepEqual(readNumbers("F-117").numbers, ["F117"]);
});

test("what cannot be read is told as it was typed, and the rest is read all the same", () => {
  assert.deepEqual(readNumbers("117, cask, 9-3, 1-2-3"), {
    numbers: ["117"],
    unread: ["cask", "9-3", "1-2-3"],
  });
});

test("a container has one state, what takes it out of use first", () => {
  const sent = [ago(1), "sent", { customer: "c1", due_on: null }] as const;
  assert.equal(stateOf(container("1", FIRKIN)), "empty");
  assert.equal(stateOf(container("1", FIRKIN, filled(9, null))), "full");
  assert.equal(stateOf(container("1", FIRKIN, filled(9, null), [ago(1), "tapped", {}])), "serving");
  assert.equal(stateOf(container("1", FIRKIN, filled(9, null), sent)), "out");
  assert.equal(stateOf(container("1", FIRKIN, sent, [ago(0), "missing", {}])), "held");
  assert.equal(stateOf(container("1", FIRKIN, [ago(0), "scrapped", {}])), "scrapped");
  assert.equal(stateOf(container("1", filled(9, null))), "unknown");
});

const some = [
  container("K12", KEG),
  container("10", FIRKIN),
  container("9", FIRKIN, filled(9, null)),
  container("K2", KEG),
  container("8", FIRKIN, [ago(0), "scrapped", {}]),
];
const numbers = (found: { number: string }[]) => found.map(({ number }) => number);

test("the register counts as people do, without what is scrapped", () => {
  assert.deepEqual(numbers(register(some, { words: "", kind: "", state: "" })), [
    "9",
    "10",
    "K2",
    "K12",
  ]);
});

test("it is filtered by kind, by state and by what was typed", () => {
  assert.deepEqual(numbers(register(some, { words: "", kind: "firkin", state: "empty" })), ["10"]);
  assert.deepEqual(numbers(register(some, { words: "k", kind: "", state: "" })), ["K2", "K12"]);
  assert.deepEqual(numbers(register(some, { words: "", kind: "", state: "scrapped" })), ["8"]);
  assert.deepEqual(numbers(register(some, { words: "8", kind: "", state: "" })), ["8"]);
});

test("a number that only a stranger has spoken of is not in the register", () => {
  const said = [ago(1), "reported", { where: "Quay" }] as const;
  const found = [
    container("999", said),
    container("9", FIRKIN, said),
    container("7", filled(9, null)),
  ];
  const unknown = register(found, { words: "", kind: "", state: "unknown" });
  assert.deepEqual(numbers(unknown), ["7"]);
  assert.deepEqual(numbers(register(found, { words: "", kind: "", state: "" })), ["7", "9"]);
});

test("a number typed in full stands first", () => {
  const found = ["12", "112", "2"].map((number) => container(number, FIRKIN));
  assert.deepEqual(numbers(exactFirst(found, "2")), ["2", "12", "112"]);
});
