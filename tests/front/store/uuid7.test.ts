// Ids made on the device.

import assert from "node:assert/strict";
import { test } from "node:test";
import { uuid7Maker } from "../../../static/src/store/uuid7.ts";

const FORM = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const fillWith = (value: number) => (bytes: Uint8Array) => bytes.fill(value);

test("an id has the form of RFC 9562 and begins with the time", () => {
  // 6.1 and 5.7 of the RFC: 48 bits of milliseconds, version 7, variant 10.
  const ms = 0x017f22e279b0;
  const id = uuid7Maker(() => ms, fillWith(0xff))();
  assert.match(id, FORM);
  assert.equal(id.slice(0, 13), "017f22e2-79b0");
});

test("ids only ever grow, also within a millisecond and when the clock goes back", () => {
  let ms = 1000;
  const make = uuid7Maker(() => ms, fillWith(0));
  const ids = [make(), make(), make()];
  ms = 500;
  ids.push(make());
  ms = 2000;
  ids.push(make());
  for (const id of ids) assert.match(id, FORM);
  assert.deepEqual(ids, [...ids].sort());
  assert.equal(new Set(ids).size, ids.length);
});

test("when all of a millisecond's numbers are used up, the next millisecond lends its own", () => {
  let first = true;
  const make = uuid7Maker(
    () => 1000,
    (bytes) => {
      bytes.fill(0xff);
      first = false;
    },
  );
  const start = make();
  assert.equal(first, false);
  let id = start;
  let next = make();
  // The random start leaves the top bit of twelve free: what follows may only count up from there.
  assert.ok(next > id);
  for (let count = 0; count < 300; count += 1) {
    id = next;
    next = make();
    assert.ok(next > id, `${next} after ${id}`);
  }
});
