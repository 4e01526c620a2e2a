// Knowing a PIN again with no network.

import assert from "node:assert/strict";
import { test } from "node:test";
import { PIN, pinFits, waitMs } from "../../../static/src/store/pin.ts";

const base64 = (hex: string): string => Buffer.from(hex, "hex").toString("base64");

test("PBKDF2 with SHA-256, as RFC 7914 section 11 works it out", async () => {
  const check = {
    salt: Buffer.from("NaCl").toString("base64"),
    iterations: 80_000,
    hash: base64(
      "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56" +
        "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d",
    ),
  };
  assert.equal(await pinFits("Password", check), true);
  assert.equal(await pinFits("password", check), false);
  assert.equal(await pinFits("Password", { ...check, iterations: 80_001 }), false);
});

test("a PIN is four to eight digits", () => {
  for (const good of ["0000", "1234", "12345678"]) assert.ok(PIN.test(good), good);
  for (const bad of ["", "123", "123456789", "12a4", " 1234", "1234\n"]) {
    assert.ok(!PIN.test(bad), JSON.stringify(bad));
  }
});

test("after two slips each wrong PIN makes the next wait twice as long, five minutes at most", () => {
  const waits = [0, 1, 2, 3, 4, 5, 20].map((count) => waitMs({ count, lastMs: 1000 }, 1000));
  assert.deepEqual(waits, [0, 0, 0, 5000, 10_000, 20_000, 300_000]);
});

test("the wait runs out, and a clock that was put back makes it no longer", () => {
  const tries = { count: 4, lastMs: 1_000_000 };
  assert.equal(waitMs(tries, 1_004_000), 6000);
  assert.equal(waitMs(tries, 1_010_000), 0);
  assert.equal(waitMs(tries, 5000), 10_000);
});
