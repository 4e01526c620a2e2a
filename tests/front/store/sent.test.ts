// Own entries that the brewery has are remembered for a month, for an undo and after a restore.

import assert from "node:assert/strict";
import { test } from "node:test";
import { forgetOldSent, takeAnswers } from "../../../static/src/store/answers.ts";
import { asTime } from "../../../static/src/store/clock.ts";
import { keepSyncedAt } from "../../../static/src/store/synced-at.ts";
import { aDevice, anOpenPage, FIRKIN, type Page } from "./a-phone.ts";

const DAY_MS = 86_400_000;

/** The brewery has just said what its time is. */
const hear = ({ phone }: Page, nowMs: number): void => {
  phone.clock.hear(phone.clock.measured(asTime(nowMs), nowMs, nowMs));
};

test("what the brewery has is forgotten after thirty days, what it has not is kept", async () => {
  const device = aDevice();
  const page = await anOpenPage(device);
  const sent = await page.book.record("registered", "117", FIRKIN);
  const unsent = await page.book.record("noted", "117", { words: "x" });
  const answer = { id: sent.entry.id, verdict: "accepted" as const, position: 1 };
  await takeAnswers(page.phone, "e", [answer], null);
  device.nowMs += 30 * DAY_MS;
  hear(page, device.nowMs);
  await forgetOldSent(page.phone);
  assert.equal(page.book.ownEntries.value.length, 2);
  device.nowMs += DAY_MS;
  hear(page, device.nowMs);
  await forgetOldSent(page.phone);
  const left = [page, await anOpenPage(device)].map(({ book }) => book.ownEntries.value);
  for (const own of left) {
    assert.deepEqual(
      own.map(({ entry }) => entry.id),
      [unsent.entry.id],
    );
  }
});

test("a clock that was set forward by a year forgets nothing", async () => {
  const device = aDevice();
  const page = await anOpenPage(device);
  const { entry } = await page.book.record("registered", "117", FIRKIN);
  const answer = { id: entry.id, verdict: "accepted" as const, position: 1 };
  await takeAnswers(page.phone, "e", [answer], null);
  hear(page, device.nowMs);
  device.nowMs += 365 * DAY_MS;
  await forgetOldSent(page.phone);
  assert.equal(page.book.ownEntries.value.length, 1);
});

test("when it last knew all is known again at the next start", async () => {
  const device = aDevice();
  const { phone } = await anOpenPage(device);
  await keepSyncedAt(phone);
  const again = await anOpenPage(device);
  assert.equal(again.phone.syncedAt, "2026-03-02T09:00:00.000Z");
});
