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
  });
  assert.deepEqual(readTyped("118", containers), { is: "one", number: "118", standing: null });
  assert.deepEqual(readTyped("", containers), { is: "nothing" });
});

test("bare digits that fit several are asked about, the plain number first", () => {
  assert.deepEqual(readTyped("12", holding("K12", "12", "A012")), {
    is: "several",
    numbers: ["12", "A012", "K12"],
  });
});

test("bare digits that fit only one with letters mean that one, unless chosen otherwise", () => {
  const containers = holding("K12");
  assert.equal((readTyped("12", containers) as { number: string }).number, "K12");
  assert.deepEqual(readTyped("12", containers, "12"), { is: "one", number: "12", standing: null });
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
