// Entries that the brewery did not take: they wait for a person, and nothing drops them by itself.

import assert from "node:assert/strict";
import { test } from "node:test";
import { takeAnswers } from "../../../static/src/store/answers.ts";
import { aDevice, anOpenPage, fillFrom, START_MS } from "./a-phone.ts";

const PROBLEM = {
  title: "Malformed",
  errors: [{ pointer: "#/facts/volume_ml", detail: "Too much" }],
};

const refused = async () => {
  const device = aDevice();
  const page = await anOpenPage(device);
  const { entry } = await page.book.record("filled", "117", fillFrom("g", 999_999));
  await takeAnswers(
    page.phone,
    "e",
    [{ id: entry.id, verdict: "refused", problem: PROBLEM }],
    null,
  );
  return { device, ...page, entry };
};

test("a refused entry is counted, says why, and is out of the container's standing", async () => {
  const { book } = await refused();
  assert.deepEqual(book.waiting.value, { count: 0, oldestAt: null, attention: 1, trouble: null });
  assert.deepEqual(book.ownEntries.value[0]?.problem, PROBLEM);
  assert.equal(book.containers.value.has("117"), false);
});

test("put right, a new entry with the same time takes its place in one step", async () => {
  const { device, book, entry } = await refused();
  device.nowMs += 60_000;
  const saved = await book.putRight(entry.id, { facts: fillFrom("g", 40_000) });
  assert.notEqual(saved.entry.id, entry.id);
  assert.equal(saved.entry.happened_at, new Date(START_MS).toISOString());
  assert.equal(book.containers.value.get("117")?.contents?.volume_ml, 40_000);
  const again = await anOpenPage(device);
  assert.deepEqual(
    again.book.ownEntries.value.map((own) => [own.entry.id, own.where]),
    [[saved.entry.id, "phone"]],
  );
});

test("offered again, it is on its way as it was", async () => {
  const { book, entry, device } = await refused();
  await book.offerAgain([entry.id]);
  assert.equal(book.waiting.value.count, 1);
  assert.equal(book.containers.value.get("117")?.fills, 1);
  const again = await anOpenPage(device);
  assert.deepEqual(again.book.ownEntries.value, book.ownEntries.value);
});

test("let go by a person, it is gone; a second time says that it is", async () => {
  const { book, entry } = await refused();
  await book.letGo(entry.id);
  assert.deepEqual(book.ownEntries.value, []);
  await assert.rejects(book.letGo(entry.id), /does not need attention any more/);
});

test("it cannot be undone, since it has done nothing", async () => {
  const { book, entry } = await refused();
  await assert.rejects(book.undo(entry.id), /nothing to undo/);
});

test("what was held and is released later comes to be at the brewery", async () => {
  const page = await anOpenPage(aDevice());
  const { entry } = await page.book.record("noted", "117", { words: "x" });
  const { id } = entry;
  await takeAnswers(page.phone, "e", [{ id, verdict: "held", problem: {} }], null);
  assert.equal(page.book.waiting.value.attention, 1);
  await takeAnswers(page.phone, "e", [{ id, verdict: "known", position: 4 }], null);
  assert.equal(page.book.waiting.value.attention, 0);
  assert.equal(page.book.ownEntries.value[0]?.where, "brewery");
});

test("what was held is told anew when somebody has decided, and not while nobody has", async () => {
  const page = await anOpenPage(aDevice());
  const { entry } = await page.book.record("noted", "117", { words: "x" });
  const told = async (type: string): Promise<string | undefined> => {
    const problem = { type: `/problems/${type}` };
    await takeAnswers(page.phone, "e", [{ id: entry.id, verdict: "held", problem }], null);
    const own = page.phone.own.byId(entry.id);
    assert.equal(own?.where, "attention");
    return own?.where === "attention" ? own.kept.problem.type : undefined;
  };
  assert.equal(await told("revoked-device"), "/problems/revoked-device");
  const before = page.phone.ownTurn.value;
  assert.equal(await told("revoked-device"), "/problems/revoked-device");
  assert.equal(page.phone.ownTurn.value, before, "nothing has changed");
  assert.equal(await told("put-aside"), "/problems/put-aside");
});
