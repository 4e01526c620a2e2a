// When things happened, whatever is done to the clock between a save and the sending of it.

import assert from "node:assert/strict";
import { test } from "node:test";
import { type SimPhone, World } from "./a-world.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const YEAR_MS = 365 * 24 * HOUR_MS;

interface Spell {
  world: World;
  phone: SimPhone;
  /** Set the clock, by so much. */
  set(ms: number): void;
  /** Lie in a pocket: the stopwatch may stand still then. */
  sleep(ms: number): void;
  /** Save an entry, and answer when that truly was. */
  save(): Promise<{ id: string; atMs: number }>;
}

/** One phone that has heard of the brewery before, if it is to have. */
const spell = async (heard: boolean): Promise<Spell> => {
  const world = await World.make(1, 1);
  const phone = world.phone(0);
  const save = async () => {
    const { entry } = await phone.book.record("noted", "117", { words: "x" });
    return { id: entry.id, atMs: world.nowMs };
  };
  if (heard) {
    await save();
    await phone.go();
    world.wait(10 * MINUTE_MS);
  }
  return {
    ...{ world, phone, save },
    set: (ms) => {
      phone.device.nowMs += ms;
      phone.skewMs += ms;
    },
    sleep: (ms) => {
      world.nowMs += ms;
      phone.device.nowMs += ms;
    },
  };
};

/** What the brewery makes of what was sent is within the delay that it does not look at. */
const sentAsItWas = async ({ world, phone }: Spell, made: { id: string; atMs: number }) => {
  const offsets = new Map<string, number>();
  world.network = (ask) => async (question) => {
    const { sent_at, entries = [] } = JSON.parse(question.body ?? "{}");
    const offsetMs = world.nowMs - Date.parse(sent_at);
    for (const { id } of entries) offsets.set(id, Math.abs(offsetMs) > 120_000 ? offsetMs : 0);
    return ask(question);
  };
  await phone.go();
  const { entry } = world.brewery.taken.get(made.id) ?? assert.fail("it was not sent");
  const tookEffectMs = Date.parse(entry.happened_at) + (offsets.get(made.id) ?? Number.NaN);
  const offMs = tookEffectMs - made.atMs;
  assert.ok(Math.abs(offMs) <= 130_000, `${offMs / MINUTE_MS} min from when it was`);
};

const STEPS = [YEAR_MS, -YEAR_MS, 3 * HOUR_MS, -3 * HOUR_MS];

for (const heard of [true, false]) {
  const who = heard ? "a phone that has heard of the brewery" : "a new phone";
  test(`${who}: a clock that is set after a save does not move what was saved`, async () => {
    for (const step of STEPS) {
      const one = await spell(heard);
      const made = await one.save();
      one.world.wait(30 * MINUTE_MS);
      one.set(step);
      one.world.wait(30 * MINUTE_MS);
      await sentAsItWas(one, made);
      assert.equal(one.phone.book.now(), new Date(one.world.nowMs).toISOString());
    }
  });

  test(`${who}: a clock that is set before a save is put right when it is sent`, async () => {
    for (const step of STEPS) {
      const one = await spell(heard);
      one.set(step);
      one.world.wait(30 * MINUTE_MS);
      const made = await one.save();
      one.world.wait(30 * MINUTE_MS);
      await sentAsItWas(one, made);
    }
  });

  test(`${who}: a clock wrong from the start, and the app closed since, is put right`, async () => {
    for (const step of STEPS) {
      const one = await spell(heard);
      one.set(step);
      await one.phone.restart();
      const made = await one.save();
      one.world.wait(5 * HOUR_MS);
      await one.phone.restart();
      await sentAsItWas(one, made);
    }
  });

  test(`${who}: a phone that slept for hours in between sends the time of the save`, async () => {
    const one = await spell(heard);
    const made = await one.save();
    one.sleep(9 * HOUR_MS);
    await sentAsItWas(one, made);
  });
}

test("set wrong by a year, saved, the app closed, and set right again: no older than known", async () => {
  for (const step of [YEAR_MS, -YEAR_MS]) {
    const one = await spell(true);
    one.set(step);
    const heardMs = one.world.nowMs;
    await one.phone.restart();
    const { id } = await one.save();
    one.set(-step);
    await one.phone.restart();
    one.world.wait(HOUR_MS);
    await sentAsItWas(one, { id, atMs: one.world.nowMs });
    assert.ok(heardMs < one.world.nowMs);
  }
});

test("a clock set by a year after the app was closed does not move what was saved", async () => {
  for (const step of [YEAR_MS, -YEAR_MS]) {
    const one = await spell(true);
    const made = await one.save();
    one.world.wait(HOUR_MS);
    one.set(step);
    await one.phone.restart();
    await sentAsItWas(one, made);
  }
});

test("entries made before and after a setting go in pushes of their own", async () => {
  const one = await spell(true);
  const before = await one.save();
  one.world.wait(HOUR_MS);
  one.set(YEAR_MS);
  const after = await one.save();
  one.world.wait(HOUR_MS);
  await sentAsItWas(one, before);
  const { entry } = one.world.brewery.taken.get(after.id) ?? assert.fail("it was not sent");
  assert.equal(Date.parse(entry.happened_at) - YEAR_MS, after.atMs);
});

test("what another phone made keeps the time that phone told, whatever this one's clock is", async () => {
  const world = await World.make(2, 1);
  const [one, two] = [world.phone(0), world.phone(1)];
  one.skewMs = -5 * HOUR_MS;
  await one.restart();
  await one.book.record("noted", "117", { words: "so that it hears of the brewery" });
  await one.go();
  const { entry } = await one.book.record("noted", "117", { words: "x" });
  two.skewMs = 2 * HOUR_MS;
  await two.restart();
  await two.book.importOutbox(await one.book.exportOutbox());
  world.wait(HOUR_MS);
  const spellOfTwo = { world, phone: two } as Spell;
  await sentAsItWas(spellOfTwo, { id: entry.id, atMs: world.nowMs - HOUR_MS });
});

test("an entry put right by a person happened when the one it replaces did", async () => {
  const one = await spell(true);
  one.set(-3 * HOUR_MS);
  await one.phone.restart();
  const { entry } = await one.phone.book.record("noted", "117", { words: "refuse" });
  const atMs = one.world.nowMs;
  await one.phone.go();
  one.world.wait(HOUR_MS);
  const repaired = await one.phone.book.putRight(entry.id, { facts: { words: "x" } });
  await sentAsItWas(one, { id: repaired.entry.id, atMs });
});

test("what an older release of the app has kept is sent as it stands", async () => {
  const one = await spell(true);
  const { entry } = await one.phone.book.record("noted", "117", { words: "x" });
  const atMs = one.world.nowMs;
  const { connection } = one.phone.phone;
  await connection.write(["outbox"], async (transaction) => {
    const outbox = transaction.objectStore("outbox");
    const [[n], [kept]] = await Promise.all([outbox.getAllKeys(), outbox.getAll()]);
    const { watch: _, ...older } = kept ?? assert.fail("nothing is kept");
    await outbox.put(older, n);
  });
  await one.phone.restart();
  one.world.wait(HOUR_MS);
  await sentAsItWas(one, { id: entry.id, atMs });
});

test("what the brewery said of the time counts, though there was no room to keep it", async () => {
  const one = await spell(true);
  const made = await one.save();
  one.set(YEAR_MS);
  await one.phone.restart();
  one.phone.fuse.full = true;
  await one.phone.go();
  assert.equal(one.world.brewery.taken.get(made.id), undefined);
  one.phone.fuse.full = false;
  await sentAsItWas(one, made);
});
