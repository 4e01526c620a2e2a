// Saving: kept before it is said, in the phone's own order, all or nothing.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../static/src/domain/standing.ts";
import { aDevice, anOpenPage, FIRKIN, fillFrom } from "./a-phone.ts";

test("an entry that was saved is there after the app is opened again", async () => {
  const device = aDevice();
  const { book } = await anOpenPage(device);
  book.setting("person", "").value = "Ann";
  const { entry } = await book.record("registered", "117", FIRKIN);
  assert.equal(entry.seq, 1);
  assert.equal(entry.person, "Ann");
  assert.equal(entry.happened_at, "2026-03-02T09:00:00.000Z");
  assert.equal(book.containers.value.get("117")?.kind, "firkin");

  const again = await anOpenPage(device);
  assert.equal(again.book.containers.value.get("117")?.kind, "firkin");
  assert.deepEqual(
    again.book.ownEntries.value.map((own) => [own.entry, own.where]),
    [[entry, "phone"]],
  );
  assert.equal(again.book.waiting.value.count, 1);
  assert.equal(again.book.waiting.value.oldestAt, "2026-03-02T09:00:00.000Z");
});

test("several entries at once are saved in their order, each on top of the one before", async () => {
  const { book, phone } = await anOpenPage(aDevice());
  const saved = await book.recordMany([
    { kind: "registered", subject: "117", facts: FIRKIN },
    { kind: "filled", subject: "117", facts: fillFrom("g1") },
    { kind: "filled", subject: "118", facts: fillFrom("g1", 40000) },
  ]);
  assert.deepEqual(
    saved.map(({ entry }) => entry.seq),
    [1, 2, 3],
  );
  const before = phone.own.byId(saved[1]?.entry.id ?? "")?.kept.before as Standing;
  assert.equal(before.kind, "firkin");
  assert.equal(book.containers.value.get("117")?.contents?.gyle, "g1");
  assert.equal(book.gyles.value.get("g1")?.drawn_ml, 80915);
});

test("running numbers and times never go back, in whichever tab and whatever the clock does", async () => {
  const device = aDevice();
  const [one, two] = [await anOpenPage(device), await anOpenPage(device)];
  await one.book.record("noted", "117", { words: "a" });
  device.nowMs -= 5000;
  const { entry } = await two.book.record("noted", "117", { words: "b" });
  assert.equal(entry.seq, 2);
  assert.equal(entry.happened_at, "2026-03-02T09:00:00.000Z");
  device.nowMs += 60_000;
  const third = await one.book.record("noted", "117", { words: "c" });
  assert.equal(third.entry.seq, 3);
  assert.equal(third.entry.happened_at, "2026-03-02T09:00:55.000Z");
});

test("a clock that was far ahead does not hold back the entries after it was put right", async () => {
  const device = aDevice();
  const { book } = await anOpenPage(device);
  device.nowMs = Date.parse("2099-01-01T00:00:00.000Z");
  await book.record("noted", "117", { words: "a" });
  device.nowMs = Date.parse("2026-03-02T09:05:00.000Z");
  const { entry } = await book.record("noted", "117", { words: "b" });
  assert.equal(entry.happened_at, "2026-03-02T09:05:00.000Z");
});

test("a time that is given is taken as it is", async () => {
  const { book } = await anOpenPage(aDevice());
  const happenedAt = "2026-03-01T18:00:00.000Z";
  const { entry } = await book.record("tapped", "117", {}, { happenedAt });
  assert.equal(entry.happened_at, happenedAt);
  const later = await book.record("emptied", "117", {});
  assert.equal(later.entry.happened_at, "2026-03-02T09:00:00.000Z");
});
