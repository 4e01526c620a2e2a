// What a camera reads off a plate leads to the container's number.

import assert from "node:assert/strict";
import { test } from "node:test";
import { DomainError } from "../../../static/src/domain/errors.ts";
import { scannedNumber } from "../../../static/src/domain/scanned.ts";

const READ: readonly (readonly [scanned: string, number: string])[] = [
  ["https://casks.example/f/F117", "F117"],
  ["HTTPS://CASKS.EXAMPLE/F/F117", "F117"],
  ["https://casks.example/8003/09521141000021F117", "F117"],
  ["(8003)09521141000021K3", "K3"],
  ["]Q3800309521141000021K3", "K3"],
  ["f 117", "F117"],
  ["117", "117"],
];

for (const [scanned, number] of READ) {
  test(`${scanned} is ${number}`, () => assert.equal(scannedNumber(scanned), number));
}

const NONE = [
  "https://shop.example/offers",
  "5012345678900",
  "",
  "https://casks.example/f/",
  "WIFI:S:x;",
];

for (const scanned of NONE) {
  test(`${scanned || "nothing"} is no container`, () => {
    assert.throws(() => scannedNumber(scanned), DomainError);
  });
}
