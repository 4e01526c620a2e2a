// The first screens come before all rows are read: what they name is known then, and what is recorded
// meanwhile waits for the rest.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blankRecord } from "../../../static/src/domain/records.ts";
import { blank, isFullHere, type Standing } from "../../../static/src/domain/standing.ts";
import { beginLoad, takePage } from "../../../static/src/store/first-load.ts";
import type { Row } from "../../../static/src/store/kept.ts";
import { takeRows, tidyPages } from "../../../static/src/store/take-rows.ts";
import { aDevice, anOpenPage, aPage, type Device, type Page } from "./a-phone.ts";

const named = (id: string, name: string, position: number): Row => {
  const doc = { ...blankRecord("beer"), fields: { name } };
  return { type: "beer", id, position, doc };
};

const GYLE = "00000000-0000-7000-8000-000000000001";
const mark = { since: "2026-03-01T09:00:00.000Z", entry: "x", by: "Ann", inferred: false };

const container = (id: string, position: number, changes: Partial<Standing>): Row => ({
  type: "container",
  id,
  position,
  doc: { ...blank(id), ...changes },
});

const full = (id: string, position: number): Row => {
  const beer = { gyle: GYLE, volume_ml: 40_000, left_ml: 40_000, best_before: null };
  const since = { doses: [], moves: 0, moved: null, dipped: null, dips: [], tasted: null };
  return container(id, position, { contents: { ...mark, ...beer, ...since } });
};

const sent = (id: string, position: number): Row => {
  const there = full(id, position);
  const trip = { ...mark, customer: "c", due_on: null, on_record_since: null };
  return { ...there, doc: { ...(there.doc as Standing), trip } };
};

const ROWS: Row[] = [
  named("b", "Mild", 1),
  container("116", 2, { fills: 2 }),
  container("117", 2, { fills: 3 }),
  full("118", 3),
  full("119", 4),
  sent("120", 5),
];

const loadInto = async ({ phone }: Page, rows: Row[]): Promise<void> => {
  await beginLoad(phone, { epoch: "e", position: 5, rules: 1 });
  await takePage(phone, { rows, next: null });
};

/** A device that has loaded a beer and containers, and heard since of another beer and two of these. */
const aLoadedDevice = async (): Promise<Device> => {
  const device = aDevice();
  const page = await anOpenPage(device);
  await loadInto(page, ROWS);
  const rows = [named("c", "Bitter", 6), sent("119", 7), full("117", 8)];
  await takeRows(page.phone, { since: 5, next: 8, rows, last: true });
  return device;
};

interface Seen {
  beers: string[];
  containers: string[];
}

/** Opens the book, and tells what was known when each of these was first said to be. */
const seenWhile = async ({ book }: Page) => {
  const seen: { begun?: Seen; fullKnown?: Seen; whole?: Seen } = {};
  for (const name of ["begun", "fullKnown", "whole"] as const) {
    book[name].subscribe((is) => {
      if (!is) return;
      const [beers, containers] = [book.beers, book.containers].map(({ value }) => [
        ...value.keys(),
      ]) as [string[], string[]];
      seen[name] ??= { beers: beers.sort(), containers: containers.sort() };
    });
  }
  await book.open();
  return seen;
};

test("what the bench names is known before containers are read", async () => {
  const seen = await seenWhile(aPage(await aLoadedDevice()));
  assert.deepEqual(seen.begun, { beers: ["b", "c"], containers: [] });
});

test("what is full at the brewery is known before the rest, also what was filled since", async () => {
  const page = aPage(await aLoadedDevice());
  const full: string[] = [];
  page.book.fullKnown.subscribe((is) => {
    if (!is || full.length > 0) return;
    for (const [id, doc] of page.book.containers.value) if (isFullHere(doc)) full.push(id);
  });
  const seen = await seenWhile(page);
  assert.deepEqual(full.sort(), ["117", "118"]);
  assert.equal(seen.fullKnown?.containers.includes("120"), false);
  assert.deepEqual(seen.whole?.containers, ["116", "117", "118", "119", "120"]);
});

test("a container that changed since its page was written stands as it changed", async () => {
  const { book } = await anOpenPage(await aLoadedDevice());
  assert.equal(book.containers.value.get("117")?.contents?.gyle, GYLE);
  assert.equal(book.containers.value.get("119")?.trip?.customer, "c");
});

test("where this phone has changed an empty one here, those are read before the cellar", async () => {
  const device = await aLoadedDevice();
  const { book } = await anOpenPage(device);
  await book.record("washed", "116", {});
  const page = aPage(device);
  const { fullKnown } = await seenWhile(page);
  assert.deepEqual(fullKnown?.containers, ["116", "117", "118", "119"]);
  assert.equal(page.book.containers.value.get("116")?.clean?.state, "washed");
  assert.equal(page.book.containers.value.get("116")?.fills, 2);
});

test("where this phone has changed one that is out, all are read before the cellar", async () => {
  const device = await aLoadedDevice();
  const { book } = await anOpenPage(device);
  await book.record("returned", "120", {});
  const { fullKnown } = await seenWhile(aPage(device));
  assert.deepEqual(fullKnown?.containers, ["116", "117", "118", "119", "120"]);
});

test("where this phone has changed a full one, the cellar comes before the rest all the same", async () => {
  const device = await aLoadedDevice();
  const { book } = await anOpenPage(device);
  await book.record("emptied", "118", {});
  const page = aPage(device);
  const { fullKnown } = await seenWhile(page);
  assert.deepEqual(fullKnown?.containers, ["117", "118", "119"]);
  assert.equal(page.book.containers.value.get("118")?.contents, null);
});

test("what is recorded meanwhile waits until it is known what it changes", async () => {
  const { book, phone } = aPage(await aLoadedDevice());
  await new Promise<void>((resolve) => {
    book.begun.subscribe((is) => (is ? resolve() : undefined));
    void book.open();
  });
  assert.equal(book.whole.value, false);
  await book.record("returned", "120", {});
  const before = phone.own.lastUnsent()?.kept.before as Standing;
  assert.equal(before.trip?.customer, "c");
});

/** Pages as releases before this one kept them: all rows of a page in one, or one for each type. */
const EARLIER: Record<string, (generation: number) => [Row[], unknown[]][]> = {
  together: (generation) => [[ROWS, [generation, 0]]],
  "by their type": (generation) => [
    [ROWS.slice(0, 1), [generation, "beer", 0]],
    [ROWS.slice(1), [generation, "container", 0]],
  ],
};

for (const [how, pagesOf] of Object.entries(EARLIER)) {
  const anEarlierDevice = async (): Promise<Device> => {
    const device = await aLoadedDevice();
    const { phone } = await anOpenPage(device);
    const { generation } = phone.rowsAt ?? assert.fail("nothing was loaded");
    await phone.connection.write(["pages"], async (transaction) => {
      await transaction.objectStore("pages").clear();
      for (const [rows, key] of pagesOf(generation)) {
        await transaction.objectStore("pages").put(rows, key as never);
      }
    });
    return device;
  };

  test(`rows that an earlier release kept ${how} are all read before the first screen`, async () => {
    const seen = await seenWhile(aPage(await anEarlierDevice()));
    const all = { beers: ["b", "c"], containers: ["116", "117", "118", "119", "120"] };
    assert.deepEqual(seen, { begun: all, fullKnown: all, whole: all });
  });

  test(`rows that an earlier release kept ${how} lie apart once they are tidied`, async () => {
    const device = await anEarlierDevice();
    const { phone, book } = await anOpenPage(device);
    const before = new Map(book.containers.value);
    await tidyPages(phone);
    const page = aPage(device);
    const seen = await seenWhile(page);
    assert.deepEqual(seen.begun, { beers: ["b", "c"], containers: [] });
    assert.deepEqual(seen.fullKnown?.containers, ["117", "118"]);
    assert.deepEqual(new Map([...page.book.containers.value].sort()), new Map([...before].sort()));
  });
}

test("what another tab did while this one was reading is caught up with", async () => {
  const device = await aLoadedDevice();
  const [one, two] = [await anOpenPage(device), aPage(device)];
  const opening = two.book.open();
  await one.book.record("emptied", "118", {});
  await opening;
  assert.equal(two.book.waiting.value.count, 1);
});
