// What goes into one push.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Own } from "../../../static/src/store/own-entries.ts";
import { batchOf, MOST_ENTRIES } from "../../../static/src/sync/batch.ts";

const own = (n: number, words = "", offsetMs = 0): Own => {
  const entry = {
    ...{ id: `id${n}`, device: "d", seq: n, kind: "noted" as const, subject: "1" },
    ...{ happened_at: "2026-03-02T09:00:00.000Z", person: "", facts: { words }, rules: 1 },
  };
  return { where: "phone", n, kept: { entry, before: null, savedAt: "", offsetMs } };
};
const late = ({ kept }: Own): number => kept.offsetMs;
const many = (count: number, words = "") =>
  Array.from({ length: count }, (_, at) => own(at + 1, words));

test("the oldest go first, at most five hundred", () => {
  const { entries, json } = batchOf(many(501), MOST_ENTRIES, late);
  assert.equal(entries.length, 500);
  const sent = JSON.parse(json) as { id: string }[];
  assert.deepEqual(
    sent.map(({ id }) => id),
    entries.map(({ kept }) => kept.entry.id),
  );
});

test("no more than a mebibyte, counted in bytes and not in letters", () => {
  const { entries, json } = batchOf(many(500, "£".repeat(2000)), MOST_ENTRIES, late);
  assert.ok(new TextEncoder().encode(json).length <= 2 ** 20 - 1024);
  assert.ok(entries.length > 200 && entries.length < 260, String(entries.length));
});

test("one entry always goes, however large", () => {
  assert.equal(
    batchOf([own(1, "x".repeat(2 ** 21)), own(2)], MOST_ENTRIES, late).entries.length,
    1,
  );
});

test("only entries whose times are off by the same", () => {
  const { entries } = batchOf([own(1, "", 0), own(2, "", 0), own(3, "", 1001)], MOST_ENTRIES, late);
  assert.deepEqual(
    entries.map(({ n }) => n),
    [1, 2],
  );
});
