// When the phone's storage fails: it is said in words, nothing is half done, and it is tried again.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Opener } from "../../../static/src/store/connection.ts";
import { lossSince, markOf, numberOn } from "../../../static/src/store/lost-storage.ts";
import type { Database } from "../../../static/src/store/schema.ts";
import { troubleFrom } from "../../../static/src/store/trouble.ts";
import { aDevice, anOpenPage, aPage, FIRKIN, openerOf } from "./a-phone.ts";

/** An opener that hands out what it opened, so that a test can do to it what browsers do. */
const watched = (device: ReturnType<typeof aDevice>) => {
  const opened: Database[] = [];
  const open: Opener = async (watching) => {
    const database = await openerOf(device)(watching);
    opened.push(database);
    return database;
  };
  return { opened, open };
};

test("a connection that the browser has closed is opened again, once, and the save goes on", async () => {
  const device = aDevice();
  const { opened, open } = watched(device);
  const { book } = await anOpenPage(device, open);
  opened[0]?.close();
  const { entry } = await book.record("noted", "117", { words: "x" });
  assert.equal(opened.length, 2);
  assert.equal(entry.seq, 1);
  assert.equal(book.waiting.value.trouble, null);
});

test("a storage that stays closed is trouble in words, and nothing counts as saved", async () => {
  const device = aDevice();
  const { book, phone } = await anOpenPage(device);
  let closed = true;
  const inner = openerOf(device);
  const page = aPage(device, async (watching) => {
    const database = await inner(watching);
    if (closed) database.close();
    return database;
  });
  await assert.rejects(page.book.record("noted", "117", { words: "x" }), /Nothing was saved/);
  assert.match(page.book.waiting.value.trouble ?? "", /Nothing was saved/);
  assert.equal(page.book.waiting.value.count, 0);
  closed = false;
  await page.book.record("noted", "117", { words: "x" });
  assert.equal(page.book.waiting.value.trouble, null);
  await book.catchUp();
  assert.equal(phone.own.unsentCount, 1);
});

test("a save that fails in the middle takes everything back", async () => {
  const device = aDevice();
  const { book } = await anOpenPage(device);
  const good = { kind: "registered", subject: "117", facts: FIRKIN } as const;
  // A function cannot be stored: the second of two requests fails when the first has been made.
  const bad = { kind: "noted", subject: "117", facts: { words: () => "x" } } as const;
  await assert.rejects(book.recordMany([good, bad]), /could not save. Nothing was kept of it/);
  assert.equal(book.containers.value.has("117"), false);
  const again = await anOpenPage(device);
  assert.equal(again.book.waiting.value.count, 0);
  const { entry } = await again.book.record("registered", "117", FIRKIN);
  assert.equal(entry.seq, 1, "the running number was taken back too");
  assert.equal(again.book.waiting.value.trouble, null);
});

test("what browsers throw is said in words for people", () => {
  const said = (name: string) => troubleFrom(new DOMException("", name)).message;
  assert.match(said("QuotaExceededError"), /no room left. Nothing was saved/);
  assert.match(said("InvalidStateError"), /closed under the app. Nothing was saved/);
  assert.match(said("VersionError"), /newer version/);
  assert.match(said("UnknownError"), /could not save/);
});

test("opening settles in its time, with words, however long the browser takes", async () => {
  const device = aDevice();
  // A tab that keeps the storage open while it is to be deleted: whoever comes next waits.
  const stubborn = device.storage.open("cellarapp", 1);
  await new Promise((resolve) => {
    stubborn.onsuccess = resolve;
  });
  device.storage.deleteDatabase("cellarapp");
  const opening = aPage(device, openerOf(device, 1)).book.open();
  const said = assert.rejects(opening, /does not answer/);
  await said;
  stubborn.result.close();
});

test("a tab gives way when a newer version of the app needs the storage, and says so", async () => {
  const device = aDevice();
  const { book } = await anOpenPage(device);
  const newer = device.storage.open("cellarapp", 2);
  await new Promise((resolve) => {
    newer.onsuccess = resolve;
  });
  assert.match(book.waiting.value.trouble ?? "", /newer version/);
  await assert.rejects(book.record("noted", "117", { words: "x" }), /newer version/);
  await assert.rejects(aPage(device).book.open(), /newer version/);
});

test("storage that was cleared under an open tab is put back from its memory", async () => {
  const device = aDevice();
  const { opened, open } = watched(device);
  const { book } = await anOpenPage(device, open);
  const first = await book.record("registered", "117", FIRKIN);
  const { device: before } = book;
  opened[0]?.close();
  device.storage = new (await import("fake-indexeddb")).IDBFactory();
  const second = await book.record("noted", "117", { words: "x" });
  assert.equal(second.entry.seq, 2);
  const again = await anOpenPage(device);
  assert.equal(again.book.device, before);
  assert.deepEqual(
    again.book.ownEntries.value.map(({ entry }) => entry.id),
    [second.entry.id, first.entry.id],
  );
});

test("storage that was cleared while the app was closed is told from the mark", () => {
  assert.match(lossSince(markOf("a", 3, 9), "b") ?? "", /3 entries had not reached the brewery/);
  assert.match(lossSince(markOf("a", 1, 9), "b") ?? "", /One entry had not/);
  assert.equal(lossSince(markOf("a", 3, 9), "a"), null);
  assert.equal(lossSince(markOf("a", 0, 9), "b"), null);
  assert.equal(lossSince(null, "b"), null);
  assert.equal(lossSince('{"device":"a","uns', "b"), null, "half written");
});

test("a storage put back to an older state does not number entries as it did others before", async () => {
  const device = aDevice();
  const page = await anOpenPage(device);
  const made = await page.book.record("registered", "117", FIRKIN);
  const mark = markOf(page.book.device, 1, 7);
  const later = await anOpenPage(device);
  numberOn(later.phone, mark);
  const { entry } = await later.book.record("noted", "117", { words: "x" });
  assert.deepEqual([made.entry.seq, entry.seq], [1, 8]);
  numberOn(later.phone, markOf("another device", 1, 99));
  assert.equal((await later.book.record("noted", "117", { words: "y" })).entry.seq, 9);
});
