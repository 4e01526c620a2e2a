// The first screen comes before all rows are read: what it names is known then, and what is recorded
// meanwhile waits for the rest.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blankRecord } from "../../../static/src/domain/records.ts";
import { blank } from "../../../static/src/domain/standing.ts";
import { beginLoad, takePage } from "../../../static/src/store/first-load.ts";
import type { Row } from "../../../static/src/store/kept.ts";
import { takeRows } from "../../../static/src/store/take-rows.ts";
import { aDevice, anOpenPage, aPage, type Device } from "./a-phone.ts";

const named = (id: string, name: string, position: number): Row => {
  const doc = { ...blankRecord("beer"), fields: { name } };
  return { type: "beer", id, position, doc };
};

const ROWS: Row[] = [
  named("b", "Mild", 1),
  { type: "container", id: "117", position: 2, doc: { ...blank("117"), fills: 3 } },
];

/** A device that has loaded a beer and a container, and heard of another beer since. */
const aLoadedDevice = async (): Promise<Device> => {
  const device = aDevice();
  const { phone } = await anOpenPage(device);
  await beginLoad(phone, { epoch: "e", position: 2, rules: 1 });
  await takePage(phone, { rows: ROWS, next: null });
  await takeRows(phone, { since: 2, next: 3, rows: [named("c", "Bitter", 3)], last: true });
  return device;
};

test("what the first screen names is known before containers are read", async () => {
  const { book } = aPage(await aLoadedDevice());
  await book.begin();
  assert.deepEqual([book.begun.value, book.whole.value], [true, false]);
  assert.deepEqual([...book.beers.value.keys()], ["b", "c"]);
  assert.equal(book.containers.value.size, 0);
  await book.open();
  assert.equal(book.whole.value, true);
  assert.equal(book.containers.value.get("117")?.fills, 3);
  assert.equal(book.beers.value.size, 2);
});

test("what is recorded meanwhile waits until it is known what it changes", async () => {
  const { book, phone } = aPage(await aLoadedDevice());
  await book.begin();
  await book.record("emptied", "117", {});
  const before = phone.own.lastUnsent()?.kept.before;
  assert.equal(before !== null && before !== undefined && "fills" in before && before.fills, 3);
});

test("rows that a release before this one kept are all read before the first screen", async () => {
  const device = await aLoadedDevice();
  const { phone } = await anOpenPage(device);
  const { generation } = phone.rowsAt ?? assert.fail("nothing was loaded");
  await phone.connection.write(["pages", "overlay"], async (transaction) => {
    await transaction.objectStore("overlay").clear();
    await transaction.objectStore("pages").clear();
    await transaction.objectStore("pages").put(ROWS, [generation, 0] as never);
  });
  const { book } = aPage(device);
  await book.begin();
  assert.deepEqual([book.begun.value, book.whole.value], [true, true]);
  assert.deepEqual([...book.beers.value.keys()], ["b"]);
});

test("what another tab did while this one was reading is caught up with", async () => {
  const device = await aLoadedDevice();
  const one = await anOpenPage(device);
  const two = aPage(device);
  await two.book.begin();
  await one.book.record("emptied", "117", {});
  await two.book.open();
  assert.equal(two.book.waiting.value.count, 1);
});
