// Own entries that the brewery has are remembered for a month, for an undo and after a restore.

import assert from "node:assert/strict";
import { test } from "node:test";
import { takeAnswers } from "../../../static/src/store/answers.ts";
import { keepSyncedAt } from "../../../static/src/store/synced-at.ts";
import { aDevice, anOpenPage, FIRKIN } from "./a-phone.ts";

const DAY_MS = 86_400_000;

test("what the brewery has is forgotten after thirty days, what it has not is kept", async () => {
  const device = aDevice();
  const page = await anOpenPage(device);
  const sent = await page.book.record("registered", "117", FIRKIN);
  const unsent = await page.book.record("noted", "117", { words: "x" });
  const answer = { id: sent.entry.id, verdict: "accepted" as const, position: 1 };
  await takeAnswers(page.phone, "e", [answer], null);
  device.nowMs += 30 * DAY_MS;
  const after30 = await anOpenPage(device);
  assert.equal(after30.book.ownEntries.value.length, 2);
  device.nowMs += DAY_MS;
  const after31 = await anOpenPage(device);
  assert.deepEqual(
    after31.book.ownEntries.value.map(({ entry }) => entry.id),
    [unsent.entry.id],
  );
});

test("when it last knew all is known again at the next start", async () => {
  const device = aDevice();
  const { phone } = await anOpenPage(device);
  await keepSyncedAt(phone);
  const again = await anOpenPage(device);
  assert.equal(again.phone.syncedAt, "2026-03-02T09:00:00.000Z");
});
