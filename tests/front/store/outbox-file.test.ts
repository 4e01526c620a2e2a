// The outbox as a file, to be carried where there is a network.

import assert from "node:assert/strict";
import { test } from "node:test";
import { takeAnswers } from "../../../static/src/store/answers.ts";
import { aDevice, anOpenPage, FIRKIN } from "./a-phone.ts";

test("what waits on one phone can be read in on another, once, as it was made", async () => {
  const one = await anOpenPage(aDevice(1));
  const sent = await one.book.record("registered", "116", FIRKIN);
  const position = { verdict: "accepted" as const, position: 1 };
  await takeAnswers(one.phone, "e", [{ id: sent.entry.id, ...position }], null);
  const made = await one.book.record("registered", "117", FIRKIN);
  const refusedEntry = await one.book.record("noted", "117", { words: "x" });
  const refusal = { verdict: "refused" as const, problem: {} };
  await takeAnswers(one.phone, "e", [{ id: refusedEntry.entry.id, ...refusal }], null);
  const file = await one.book.exportOutbox();

  const device = aDevice(2);
  const two = await anOpenPage(device);
  assert.deepEqual(await two.book.importOutbox(file), { added: 2, known: 0 });
  assert.deepEqual(await two.book.importOutbox(file), { added: 0, known: 2 });
  const again = await anOpenPage(device);
  assert.deepEqual(
    again.book.ownEntries.value.map(({ entry }) => entry),
    [refusedEntry.entry, made.entry],
  );
  assert.equal(again.book.containers.value.get("117")?.kind, "firkin");
});

test("a file read in twice at once, or that holds an entry twice, adds each entry once", async () => {
  const one = await anOpenPage(aDevice(1));
  await one.book.record("registered", "117", FIRKIN);
  const file = await one.book.exportOutbox();
  const device = aDevice(2);
  const [tab, other] = [await anOpenPage(device), await anOpenPage(device)];
  const read = await Promise.all(
    [tab, tab, other].map(({ book }) => book.importOutbox(file).then(({ added }) => added)),
  );
  assert.deepEqual(read.sort(), [0, 0, 1]);
  assert.equal(tab.book.waiting.value.count, 1);

  const said = JSON.parse(await file.text());
  const twice = JSON.stringify({ ...said, entries: [...said.entries, ...said.entries] });
  const three = await anOpenPage(aDevice(3));
  const imported = await three.book.importOutbox(new Blob([twice]));
  assert.deepEqual(imported, { added: 1, known: 1 });
  assert.equal((await anOpenPage(device)).book.waiting.value.count, 1);
});

test("a file that holds something else is not read in at all", async () => {
  const { book } = await anOpenPage(aDevice());
  const good = { what: "cellarapp outbox", version: 1, entries: [] };
  for (const text of ["", "{}", "[1]", JSON.stringify({ ...good, entries: [{ entry: {} }] })]) {
    await assert.rejects(book.importOutbox(new Blob([text])), /Nothing was read in/);
  }
  assert.equal(book.waiting.value.count, 0);
});
