// The sum by which a phone notices that its rows are not the brewery's.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blank } from "../../../static/src/domain/standing.ts";
import { crc32 } from "../../../static/src/store/crc32.ts";
import { HeldRows } from "../../../static/src/store/held-rows.ts";

const row = (id: string, position: number) => {
  return { type: "container" as const, id, position, doc: blank(id) };
};

test("CRC-32 gives the published check value, and works on bytes", () => {
  // "123456789" is the check string of the catalogue of parametrised CRC algorithms.
  assert.equal(crc32("123456789"), 0xcbf43926);
  assert.equal(crc32(""), 0);
  // What zlib.crc32 of Python gives for the same text in UTF-8.
  assert.equal(crc32("a£b"), 0x1663e20a);
});

test("the sum is the same whatever order the rows came in and whatever stood before", () => {
  const one = new HeldRows();
  for (const held of [row("1", 1), row("2", 2), row("1", 7)]) one.put(held);
  const other = new HeldRows();
  for (const held of [row("1", 7), row("2", 2)]) other.put(held);
  assert.equal(one.checksum, other.checksum);
  assert.equal(one.checksum, crc32("container:1:7") + crc32("container:2:2"));
  other.put(row("2", 3));
  assert.notEqual(one.checksum, other.checksum);
});

test("a row never goes back to an older position", () => {
  const rows = new HeldRows();
  rows.put(row("1", 5));
  assert.equal(rows.isNews(row("1", 4)), false);
  assert.equal(rows.isNews(row("1", 5)), true);
  assert.equal(rows.isNews(row("2", 1)), true);
});
