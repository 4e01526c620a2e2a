// Crashes at every await point of saving, sending and taking in: enumerated, not sampled.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FIRKIN, fillFrom } from "../store/a-phone.ts";
import { World } from "./a-world.ts";

/** What is done while the page may die, and what it told the person before it did. */
type Deed = (world: World, told: string[]) => Promise<unknown>;

/** Run the deed with a crash at the 1st, 2nd, 3rd... point, until it gets through without one. */
const everywhere = async (before: Deed, deed: Deed): Promise<number> => {
  for (let at = 1; ; at += 1) {
    const world = await World.make(2, at);
    const told: string[] = [];
    await before(world, told);
    const phone = world.phone(0);
    phone.fuse.set(at);
    const ended = await Promise.race([deed(world, told).then(() => "through"), phone.fuse.death]);
    phone.fuse.set(0);
    if (ended === "crashed") await phone.restart();
    await world.holdsTogether();
    for (const id of told) assert.ok(await world.hasOnce(0, id), `crash at ${at} lost ${id}`);
    await world.heal();
    await world.isSettled();
    for (const id of told) assert.ok(world.brewery.taken.has(id), `crash at ${at}: ${id}`);
    assert.equal(new Set(world.brewery.accepted).size, world.brewery.accepted.length);
    if (ended === "through") return at - 1;
  }
};

const nothing: Deed = async () => undefined;
const record = async (world: World, told: string[], kind: "filled" | "noted", of: number) => {
  const facts =
    kind === "filled" ? fillFrom("0190a000-0000-7000-8000-00000000000a") : { words: "x" };
  const { entry } = await world.phone(of).book.record(kind, "117", facts);
  told.push(entry.id);
};

test("a crash at any point of a save leaves it kept or not made at all", async () => {
  const points = await everywhere(nothing, (world, told) => record(world, told, "filled", 0));
  assert.ok(points >= 6, `only ${points} points`);
});

test("a crash at any point of sending loses nothing and sends nothing twice", async () => {
  const points = await everywhere(
    async (world, told) => {
      await world.phone(0).book.record("registered", "117", FIRKIN);
      await record(world, told, "filled", 0);
      await record(world, told, "noted", 0);
    },
    (world) => world.phone(0).go(),
  );
  assert.ok(points >= 30, `only ${points} points`);
});

test("a crash at any point of a first load, taken up again, ends in the same rows", async () => {
  const points = await everywhere(
    async (world) => {
      const other = world.phone(1);
      for (const number of ["1", "2", "3", "4", "5", "6", "7"]) {
        await other.book.record("registered", number, FIRKIN);
      }
      await other.go();
    },
    (world) => world.phone(0).go(),
  );
  assert.ok(points >= 40, `only ${points} points`);
});

test("a crash at any point of taking in what others did ends in the same rows", async () => {
  const points = await everywhere(
    async (world, told) => {
      await record(world, told, "filled", 0);
      await world.phone(0).go();
      await record(world, [], "noted", 1);
      await world.phone(1).book.record("emptied", "117", {});
      await world.phone(1).go();
    },
    (world) => world.phone(0).go(),
  );
  assert.ok(points >= 15, `only ${points} points`);
});

test("a crash at any point of the fresh start after a restore offers all of it again", async () => {
  const points = await everywhere(
    async (world, told) => {
      await record(world, [], "noted", 1);
      await world.phone(1).go();
      const copy = world.copy();
      await record(world, told, "filled", 0);
      await world.phone(0).go();
      world.restore(copy);
    },
    (world) => world.phone(0).go(),
  );
  assert.ok(points >= 40, `only ${points} points`);
});
