// Two tabs of one phone show the same, as soon as one of them has changed something.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blank } from "../../../static/src/domain/standing.ts";
import { takeAnswers } from "../../../static/src/store/answers.ts";
import { beginLoad, takePage } from "../../../static/src/store/first-load.ts";
import { takeRows } from "../../../static/src/store/take-rows.ts";
import { aDevice, anOpenPage, FIRKIN, type Page } from "./a-phone.ts";

/** Resolves when a page shows what is asked for: never by time, always by the thing itself. */
const until = (page: Page, shows: () => boolean): Promise<void> =>
  new Promise((resolve) => {
    const stop = page.book.waiting.subscribe(() => look());
    const stopToo = page.book.containers.subscribe(() => look());
    function look() {
      if (!shows()) return;
      queueMicrotask(() => {
        stop();
        stopToo();
      });
      resolve();
    }
  });

const twoTabs = async (): Promise<[Page, Page]> => {
  const device = aDevice();
  return [await anOpenPage(device), await anOpenPage(device)];
};

test("an entry saved in one tab shows in the other, and so does its arrival", async () => {
  const [one, two] = await twoTabs();
  const { entry } = await one.book.record("registered", "117", FIRKIN);
  await until(two, () => two.book.containers.value.get("117")?.kind === "firkin");
  assert.equal(two.book.waiting.value.count, 1);
  await takeAnswers(one.phone, "e", [{ id: entry.id, verdict: "accepted", position: 1 }], null);
  await until(two, () => two.book.waiting.value.count === 0);
  assert.equal(two.book.ownEntries.value[0]?.where, "brewery");
});

test("rows that one tab takes in show in the other", async () => {
  const [one, two] = await twoTabs();
  await beginLoad(one.phone, { epoch: "e", position: 0, rules: 1 });
  const row = { type: "container" as const, id: "9", position: 1, doc: blank("9") };
  await takePage(one.phone, { rows: [row], next: null });
  await until(two, () => two.book.containers.value.has("9"));
  const later = { ...row, position: 3, doc: { ...row.doc, fills: 2 } };
  await takeRows(one.phone, { since: 0, next: 3, rows: [later], last: true });
  await until(two, () => two.book.containers.value.get("9")?.fills === 2);
  assert.deepEqual(two.phone.rowsAt, one.phone.rowsAt);
});

test("a tab that slept through the news catches up when it is looked at", async () => {
  const [one, two] = await twoTabs();
  one.phone.tabs.tell = () => undefined;
  const { entry } = await one.book.record("registered", "117", FIRKIN);
  await one.book.record("noted", "117", { words: "x" });
  await beginLoad(one.phone, { epoch: "e", position: 4, rules: 1 });
  await takePage(one.phone, { rows: [], next: null });
  const problem = { title: "No" };
  await takeAnswers(one.phone, "e", [{ id: entry.id, verdict: "refused", problem }], null);
  assert.equal(two.book.waiting.value.count, 0);
  await two.book.catchUp();
  assert.deepEqual(two.book.waiting.value, one.book.waiting.value);
  assert.deepEqual(two.book.ownEntries.value, one.book.ownEntries.value);
  assert.deepEqual(two.phone.rowsAt, one.phone.rowsAt);
});

test("a setting that is changed in one tab is changed in the other, and kept", async () => {
  const device = aDevice();
  const [one, two] = [await anOpenPage(device), await anOpenPage(device)];
  const theirs = two.book.setting("light", false);
  const heard = new Promise<void>((resolve) => {
    theirs.subscribe((light) => light && resolve());
  });
  one.book.setting("light", false).value = true;
  await heard;
  const again = await anOpenPage(device);
  assert.equal(again.book.setting("light", false).value, true);
});

test("a setting asked for before the storage is open takes the kept value when it is", async () => {
  const device = aDevice();
  const first = await anOpenPage(device);
  first.book.setting("person", "").value = "Ann";
  await first.book.record("noted", "1", { words: "the setting has been written before this" });
  const { aPage } = await import("./a-phone.ts");
  const { book } = aPage(device);
  const person = book.setting("person", "");
  assert.equal(person.value, "");
  await book.open();
  assert.equal(person.value, "Ann");
});
