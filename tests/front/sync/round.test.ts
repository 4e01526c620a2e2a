// Rounds with a brewery: what each answer leads to.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { MadeEntry } from "../../../static/src/domain/entries.ts";
import type { Question } from "../../../static/src/sync/transport.ts";
import { FIRKIN } from "../store/a-phone.ts";
import { World } from "./a-world.ts";

/** A world that writes down what is asked. */
const listening = async (phones = 1): Promise<{ world: World; asked: Question[] }> => {
  const world = await World.make(phones, 1);
  const asked: Question[] = [];
  world.network = (ask) => (question) => {
    asked.push(question);
    return ask(question);
  };
  return { world, asked };
};
const paths = (asked: Question[]) => asked.map(({ path }) => path.replace(/\?.*/, ""));
const pushes = (asked: Question[]) =>
  asked.filter(({ path }) => path === "/api/push").map(({ body }) => JSON.parse(body ?? ""));

test("entries go first, then the first load, then what has changed", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.book.record("registered", "117", FIRKIN);
  await phone.go();
  const order = ["/api/push", "/api/snapshot", "/api/snapshot/pages", "/api/pull"];
  assert.deepEqual(paths(asked), order);
  assert.deepEqual(Object.keys(pushes(asked)[0]), [
    ...["proto", "app", "epoch", "sent_at", "device", "waiting", "oldest_waiting_at", "entries"],
  ]);
  const { online, busy, message, lastSyncAt } = phone.sync.state.value;
  assert.deepEqual({ online, busy, message }, { online: true, busy: false, message: null });
  assert.equal(lastSyncAt, phone.book.now());
  asked.length = 0;
  await phone.go();
  assert.deepEqual(paths(asked), ["/api/pull"]);
});

test("five thousand entries of ten days offline go in ten pushes, in their order", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  const drafts = Array.from({ length: 5000 }, (_, at) => {
    return { kind: "noted" as const, subject: "117", facts: { words: `${at}` } };
  });
  await phone.book.recordMany(drafts);
  await phone.go();
  const sent = pushes(asked).map(({ entries }) => entries.map(({ seq }: { seq: number }) => seq));
  assert.equal(sent.length, 10);
  assert.deepEqual(
    sent.flat(),
    drafts.map((_, at) => at + 1),
  );
  await world.isSettled();
});

test("an entry refused or held does not hold up its neighbours", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  for (const words of ["a", "refuse", "hold", "b"]) {
    await phone.book.record("noted", "117", { words });
  }
  await phone.go();
  assert.equal(pushes(asked)[0].entries.length, 4);
  assert.equal(world.brewery.taken.size, 2);
  assert.equal(phone.book.waiting.value.attention, 2);
});

test("entries that cannot be judged now stay, each offered once a round, others go on", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  const { entry } = await phone.book.record("noted", "117", { words: "a" });
  world.brewery.later.add(entry.id);
  await phone.book.record("noted", "117", { words: "b" });
  await phone.go();
  assert.equal(pushes(asked).length, 1);
  assert.equal(phone.book.waiting.value.count, 1);
  assert.match(phone.sync.state.value.message ?? "", /could not take one entry yet/);
  world.brewery.later.clear();
  await phone.go();
  assert.equal(phone.book.waiting.value.count, 0);
  assert.equal(phone.sync.state.value.message, null);
});

test("what is held is asked about when the app is opened and when wanted, not at every round", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.go();
  await phone.book.record("noted", "117", { words: "hold" });
  for (let round = 0; round < 3; round += 1) await phone.sync.go("hope");
  assert.equal(pushes(asked).length, 1);
  await phone.restart();
  for (let round = 0; round < 3; round += 1) await phone.sync.go("hope");
  assert.equal(pushes(asked).length, 2);
  await phone.sync.go("asked");
  assert.equal(pushes(asked).length, 3);
  assert.equal(phone.book.waiting.value.attention, 1);
});

test("that an owner has taken in what was held is noticed with the row that it changed", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.go();
  await phone.book.record("noted", "117", { words: "hold" });
  await phone.sync.go("hope");
  const [held] = world.brewery.held.values();
  assert.equal(phone.book.waiting.value.attention, 1);
  world.brewery.takeIn(held ?? assert.fail("nothing is held"));
  await phone.sync.go("hope");
  assert.equal(phone.book.waiting.value.attention, 0);
  assert.equal(pushes(asked).length, 2);
  await world.isSettled();
});

test("all that is held is asked about, whatever the clock said when it was recorded", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  const ids: string[] = [];
  for (const offsetMs of [0, 60_000, 0]) {
    const measuredAt = phone.book.now();
    phone.phone.clock.hear({ offsetMs, measuredAt });
    ids.push((await phone.book.record("noted", "117", { words: "hold" })).entry.id);
    await phone.go();
  }
  await phone.restart();
  asked.length = 0;
  await phone.go();
  const about = pushes(asked).flatMap(({ entries }) => entries.map(({ id }: MadeEntry) => id));
  assert.deepEqual(about.sort(), ids.sort());
});

test("a push that is too large is halved; one entry that is too large waits for a person", async () => {
  const { world } = await listening();
  const phone = world.phone(0);
  world.brewery.mostBytes = 2000;
  for (let count = 0; count < 12; count += 1) {
    const words = count === 5 ? "x".repeat(3000) : "fine";
    await phone.book.record("noted", "117", { words });
  }
  await phone.go();
  assert.equal(world.brewery.taken.size, 11);
  assert.equal(phone.book.waiting.value.attention, 1);
  assert.match(phone.book.ownEntries.value[6]?.problem?.title ?? "", /too large/);
});

test("rows that do not add up are fetched anew, once, with the outbox untouched", async () => {
  const { world, asked } = await listening(2);
  const [one, two] = [world.phone(0), world.phone(1)];
  await one.book.record("registered", "117", FIRKIN);
  await one.go();
  await two.go();
  const rows = two.phone.rows;
  const row = rows.get("container:117");
  if (row) rows.put({ ...row, position: 99 });
  await two.book.record("noted", "118", { words: "hold" });
  asked.length = 0;
  await two.go();
  const order = ["/api/push", "/api/pull", "/api/snapshot", "/api/snapshot/pages", "/api/pull"];
  assert.deepEqual(paths(asked).slice(0, 5), order);
  assert.equal(two.phone.rows.checksum, world.brewery.checksum());
  assert.equal(two.book.waiting.value.attention, 1);
  assert.match(two.sync.notice.value ?? "", /not what the brewery has: 117\. It was fetched again/);
  two.sync.notice.value = null;
  await two.go();
  assert.equal(two.sync.notice.value, null, "told once");
});

test("a ledger put back by hand, under its old name, is sent what it has forgotten", async () => {
  for (const others of [0, 4]) {
    const { world } = await listening(2);
    const [one, two] = [world.phone(0), world.phone(1)];
    await two.book.record("registered", "1", FIRKIN);
    await two.go();
    const { head, taken, rows } = world.copy();
    const { entry } = await one.book.record("registered", "117", FIRKIN);
    await one.go();
    Object.assign(world.brewery, { head, taken, rows });
    for (let n = 0; n < others; n += 1) {
      await two.book.record("noted", "1", { words: `${n}` });
      await two.go();
    }
    await one.go();
    assert.ok(world.brewery.taken.has(entry.id), `with ${others} entries of others since`);
    assert.match(one.sync.notice.value ?? "", others === 0 ? /restored/ : /not what the brewery/);
    await world.heal();
    await world.isSettled();
  }
});

test("rows that never add up do not become a loop: the phone says so and waits longer", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.go();
  world.brewery.checksum = () => 1;
  const waits: number[] = [];
  for (let round = 0; round < 3; round += 1) {
    asked.length = 0;
    await phone.sync.go(round === 0 ? "asked" : "due");
    assert.ok(asked.length <= 4, paths(asked).join());
    assert.match(phone.sync.state.value.message ?? "", /do not agree/);
    waits.push(phone.sync.pace.failures);
    world.wait(phone.sync.pace.dueMs - world.nowMs);
  }
  assert.deepEqual(waits, [1, 2, 3]);
});

test("after a restore the phone offers its last month again, and says so once", async () => {
  const { world } = await listening(2);
  const [one, two] = [world.phone(0), world.phone(1)];
  await two.book.record("registered", "1", FIRKIN);
  await two.go();
  const copy = world.copy();
  const { entry } = await one.book.record("registered", "117", FIRKIN);
  await one.go();
  const unsent = await one.book.record("noted", "117", { words: "x" });
  world.restore(copy);
  await one.go();
  assert.ok(world.brewery.taken.has(entry.id));
  assert.ok(world.brewery.taken.has(unsent.entry.id));
  assert.match(one.sync.notice.value ?? "", /restored from a copy. One entry .* is sent again/);
  one.sync.notice.value = null;
  await one.go();
  assert.equal(one.sync.notice.value, null);
  await two.go();
  await world.isSettled();
});

test("rows made by other rules are fetched anew", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.go();
  world.brewery.rules = 2;
  asked.length = 0;
  await phone.go();
  assert.deepEqual(paths(asked), [
    ...["/api/pull", "/api/snapshot", "/api/snapshot/pages", "/api/pull"],
  ]);
  assert.equal(phone.phone.rowsAt?.rules, 2);
});

test("rows of a type that only a later release knows are kept and not shown", async () => {
  const { world } = await listening();
  const phone = world.phone(0);
  const kept = await phone.book.record("registered", "117", FIRKIN);
  await phone.go();
  const doc = { fields: {}, set_by: {} };
  const later = { type: "hop_garden" as never, id: "x", position: world.brewery.head + 1, doc };
  world.brewery.head += 1;
  world.brewery.rows.set("hop_garden:x", later);
  await phone.go();
  assert.equal(phone.sync.state.value.message, null);
  assert.equal(phone.phone.rows.checksum, world.brewery.checksum());
  await phone.restart();
  assert.equal(phone.book.containers.value.get("117")?.registered?.entry, kept.entry.id);
});

test("the clock is corrected by what the brewery's says, and later entries carry it", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  phone.skewMs = -3_600_000;
  await phone.restart();
  await phone.book.record("noted", "117", { words: "before" });
  await phone.go();
  assert.equal(phone.book.now(), new Date(world.nowMs).toISOString());
  const { entry } = await phone.book.record("noted", "117", { words: "after" });
  assert.equal(entry.happened_at, new Date(world.nowMs).toISOString());
  await phone.go();
  const [first, second] = pushes(asked);
  assert.equal(first.sent_at, new Date(world.nowMs - 3_600_000).toISOString());
  assert.equal(second.sent_at, new Date(world.nowMs).toISOString());
  assert.match(phone.sync.notice.value ?? "", /^This phone's clock is one hour slow\. /);
  phone.sync.notice.value = null;
  await phone.go();
  assert.equal(phone.sync.notice.value, null, "told once");
});

test("a clock is told to be wrong in the unit that says it best", async () => {
  const minute = 60_000;
  const cases: [skewMs: number, words: string | null][] = [
    [119_000, null],
    [5 * minute, "5 minutes fast"],
    [-3 * 60 * minute, "3 hours slow"],
    [24 * 60 * minute, "one day fast"],
    [-2 * 365 * 24 * 60 * minute, "2 years slow"],
  ];
  for (const [skewMs, words] of cases) {
    const { world } = await listening();
    const phone = world.phone(0);
    phone.skewMs = skewMs;
    await phone.restart();
    await phone.book.record("noted", "117", { words: "x" });
    await phone.go();
    const told = phone.sync.notice.value;
    assert.equal(told?.match(/clock is (.*?)\./)?.[1] ?? null, words);
  }
});

test("a fault of any kind is said, and the engine goes on afterwards", async () => {
  const { world } = await listening();
  const phone = world.phone(0);
  world.network = () => () => Promise.reject(new Error("a fault of ours"));
  await phone.go();
  const { busy, message } = phone.sync.state.value;
  assert.deepEqual({ busy, message }, { busy: false, message: "a fault of ours" });
  world.network = (ask) => ask;
  await phone.go();
  assert.equal(phone.sync.state.value.message, null);
});

test("what is saved while a round is under way sets out in the next, at once", async () => {
  const { world, asked } = await listening();
  const phone = world.phone(0);
  await phone.go();
  asked.length = 0;
  const running = phone.sync.go("asked");
  await phone.book.record("noted", "117", { words: "x" });
  await phone.sync.go("saved");
  await running;
  assert.equal(pushes(asked).length, 1);
  assert.equal(phone.book.waiting.value.count, 0);
});
