// A shared tablet goes from hand to hand by PIN.

import assert from "node:assert/strict";
import { pbkdf2Sync } from "node:crypto";
import { test } from "node:test";
import { signal } from "@preact/signals";
import type { PinCheck } from "../../../../static/src/store/account.ts";
import { Refused } from "../../../../static/src/sync/asking.ts";
import { CANNOT_REACH, NoAnswer } from "../../../../static/src/sync/transport.ts";
import { type Hands, handOver } from "../../../../static/src/ui/people/hand-over.ts";

const checkOf = (pin: string): PinCheck => {
  const salt = Buffer.from("salt of bob");
  const hash = pbkdf2Sync(pin, salt, 1000, 32, "sha256").toString("base64");
  return { salt: salt.toString("base64"), iterations: 1000, hash };
};

interface Tablet extends Hands {
  now: number;
  told: string[];
}

/** A tablet that knows Bob by 2468. `brewery` is the PIN that the brewery takes; null is no signal. */
const tablet = (brewery: string | null): Tablet => {
  const ask = async (name: string, pin: string): Promise<void> => {
    if (brewery === null) throw new NoAnswer(CANNOT_REACH);
    made.told.push(name);
    if (pin !== brewery) throw new Refused("wrong-pin", "That is not the PIN of this person.");
  };
  const made: Tablet = {
    now: 1_000_000,
    told: [],
    checkOf: (name) => (name === "Bob" ? checkOf("2468") : null),
    wrongTries: signal({}),
    person: signal("Ann"),
    here: async (name, pin) => {
      await ask(name, pin);
      made.person.value = name;
    },
    tellHere: ask,
    nowMs: () => made.now,
  };
  return made;
};

test("whom the tablet knows takes it with no signal", async () => {
  const hands = tablet(null);
  assert.equal(await handOver(hands, "Bob", "2468"), null);
  assert.equal(hands.person.value, "Bob");
});

test("with a signal the brewery hears of it", async () => {
  const hands = tablet("2468");
  assert.equal(await handOver(hands, "Bob", "2468"), null);
  assert.deepEqual(hands.told, ["Bob"]);
});

test("whom it does not know takes it once the brewery has said so", async () => {
  const silent = tablet(null);
  assert.match((await handOver(silent, "Dee", "1357")) ?? "", /The first time it takes a signal/);
  assert.equal(silent.person.value, "Ann");
  assert.deepEqual(silent.wrongTries.value, {}, "nobody has typed anything wrong");
  const hands = tablet("1357");
  assert.equal(await handOver(hands, "Dee", "1357"), null);
  assert.equal(hands.person.value, "Dee");
});

test("a PIN that was changed at the brewery counts, though the tablet knows the old one", async () => {
  const hands = tablet("9753");
  assert.equal(await handOver(hands, "Bob", "9753"), null);
  assert.equal(hands.person.value, "Bob");
});

test("a phone that is signed out goes by what it knows itself", async () => {
  const hands = tablet("2468");
  hands.here = async () => {
    throw new Refused("not-paired", "Sign in.");
  };
  assert.equal(await handOver(hands, "Bob", "1111"), "That is not the PIN.");
  assert.equal(hands.wrongTries.value["Bob"]?.count, 1);
  assert.match((await handOver(hands, "Dee", "1357")) ?? "", /a phone that is signed in/);
  assert.equal(await handOver(hands, "Bob", "2468"), null);
});

test("what the brewery refuses for another reason is no wrong PIN", async () => {
  const hands = tablet("2468");
  hands.here = async () => {
    throw new Refused("too-many-tries", "This was tried too often.");
  };
  assert.equal(await handOver(hands, "Dee", "1357"), "This was tried too often.");
  assert.deepEqual(hands.wrongTries.value, {});
});

test("wrong ones slow it down, also with no signal, until the right one comes in time", async () => {
  for (const brewery of [null, "2468"]) {
    const hands = tablet(brewery);
    for (let slip = 0; slip < 3; slip += 1) {
      assert.match((await handOver(hands, "Bob", "1111")) ?? "", /^That is not the PIN/);
    }
    assert.match((await handOver(hands, "Bob", "2468")) ?? "", /wait 5 s/);
    assert.equal(hands.person.value, "Ann");
    hands.now += 5000;
    assert.equal(await handOver(hands, "Bob", "2468"), null);
    assert.match((await handOver(hands, "Bob", "1111")) ?? "", /^That is not the PIN/);
    assert.equal(await handOver(hands, "Bob", "2468"), null, "the count began anew");
  }
});
