// Entries of a phone that cannot reach the brewery, carried there on another one.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FIRKIN } from "../store/a-phone.ts";
import { World } from "./a-world.ts";

test("carried by two phones and sent by its own in the end, each entry stands once", async () => {
  const world = await World.make(3, 1);
  const [one, two, three] = [world.phone(0), world.phone(1), world.phone(2)];
  await one.book.recordMany([
    { kind: "registered", subject: "117", facts: FIRKIN },
    { kind: "noted", subject: "117", facts: { words: "before" } },
  ]);
  const file = await one.book.exportOutbox();

  for (const other of [two, three]) {
    assert.deepEqual(await other.book.importOutbox(file), { added: 2, known: 0 });
    assert.deepEqual(await other.book.importOutbox(file), { added: 0, known: 2 });
    await other.go();
    assert.equal(other.book.waiting.value.count, 0);
    assert.deepEqual(await other.book.importOutbox(file), { added: 0, known: 2 });
  }
  assert.equal(world.brewery.accepted.length, 2);
  const devices = [...world.brewery.taken.values()].map(({ entry }) => entry.device);
  assert.deepEqual(new Set(devices), new Set([one.book.device]));

  await one.book.record("noted", "117", { words: "after" });
  await world.heal();
  assert.equal(world.brewery.accepted.length, 3);
  await world.isSettled();
  await world.holdsTogether();
});

test("read in again long after, when the phone has forgotten what it sent, nothing doubles", async () => {
  const world = await World.make(2, 1);
  const [one, two] = [world.phone(0), world.phone(1)];
  await one.book.record("registered", "117", FIRKIN);
  const file = await one.book.exportOutbox();
  await two.book.importOutbox(file);
  await two.go();
  world.wait(40 * 86_400_000);
  await two.restart();
  await two.book.record("noted", "117", { words: "so that it hears what the time is" });
  await two.go();
  assert.deepEqual(await two.book.importOutbox(file), { added: 1, known: 0 });
  await world.heal();
  assert.equal(world.brewery.accepted.length, 2);
  await world.isSettled();
});
