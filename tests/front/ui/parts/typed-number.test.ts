// What the digits on the pad mean.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blank, type Standing } from "../../../../static/src/domain/standing.ts";
import { beginning, readTyped } from "../../../../static/src/ui/parts/typed-number.ts";

const holding = (...numbers: string[]): ReadonlyMap<string, Standing> =>
  new Map(numbers.map((number) => [number, blank(number)]));

test("a number on record, and one that is not", () => {
  const containers = holding("117");
  assert.deepEqual(readTyped("117", containers), {
    is: "one",
    number: "117",
    standing: blank("117"),
    others: [],
  });
  assert.deepEqual(readTyped("118", containers), {
    is: "one",
    number: "118",
    standing: null,
    others: [],
  });
  assert.deepEqual(readTyped("", containers), { is: "nothing" });
});

const MARK = { since: "2026-01-05T08:00:00.000Z", entry: "e1", by: "Ann", inferred: false };
const onRecord = (number: string): Standing => ({ ...blank(number), registered: MARK });
const registered = (...numbers: string[]): ReadonlyMap<string, Standing> =>
  new Map(numbers.map((number) => [number, onRecord(number)]));

test("bare digits that fit several and none exactly are asked about", () => {
  assert.deepEqual(readTyped("12", registered("K12", "A012")), {
    is: "several",
    numbers: ["A012", "K12"],
  });
  assert.equal(readTyped("012", registered("12", "K12")).is, "several");
});

test("the very number that was typed wins, and what else it may mean is one tap away", () => {
  const containers = registered("K12", "12", "A012");
  assert.deepEqual(readTyped("12", containers), {
    is: "one",
    number: "12",
    standing: onRecord("12"),
    others: ["A012", "K12"],
  });
  assert.deepEqual(readTyped("12", containers, "K12"), {
    is: "one",
    number: "K12",
    standing: onRecord("K12"),
    others: ["12", "A012"],
  });
});

test("a number that is scrapped, or was never entered, does not win over one in use", () => {
  const held = { ...MARK, state: "scrapped" as const, why: "split" };
  const scrapped = new Map([...registered("K12"), ["12", { ...onRecord("12"), held }]]);
  assert.equal(readTyped("12", scrapped).is, "several");
  assert.equal(readTyped("12", new Map([...registered("K12"), ["12", blank("12")]])).is, "several");
});

test("bare digits that fit only one with letters mean that one, unless chosen otherwise", () => {
  const containers = holding("K12");
  assert.deepEqual(readTyped("12", containers), {
    is: "one",
    number: "K12",
    standing: blank("K12"),
    others: ["12"],
  });
  assert.deepEqual(readTyped("12", containers, "12"), {
    is: "one",
    number: "12",
    standing: null,
    others: ["K12"],
  });
});

test("letters alone are not a number yet", () => {
  assert.equal(readTyped("K", holding()).is, "unfinished");
});

test("a run counts on, written short or in full, and finds the lettered ones in it", () => {
  const numbers = (typed: string, ...held: string[]) => {
    const read = readTyped(typed, holding(...held));
    return read.is === "run" ? read.numbers : read.is;
  };
  assert.deepEqual(numbers("117-119"), ["117", "118", "119"]);
  assert.deepEqual(numbers("117-19"), ["117", "118", "119"]);
  assert.deepEqual(numbers("K7-9"), ["K7", "K8", "K9"]);
  assert.deepEqual(numbers("11-13", "11", "K12", "13"), ["11", "K12", "13"]);
});

test("half a run, one that goes down and one too long are not done yet", () => {
  for (const typed of ["117-", "117-1", "119-117", "1-999", "K-9"]) {
    assert.equal(readTyped(typed, holding()).is, "unfinished", typed);
  }
});

test("suggestions begin as typed, exact ones first, and stop at the most", () => {
  const containers = holding("K12", "120", "12", "1", "9", "121");
  assert.deepEqual(beginning("12", containers, 3), ["12", "K12", "120"]);
  assert.deepEqual(beginning("", containers, 3), []);
});
