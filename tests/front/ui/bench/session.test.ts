// What the bench lists as done today, and what belongs to each.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Facts, Kind } from "../../../../static/src/domain/entries.ts";
import type { OwnEntry } from "../../../../static/src/store/book.ts";
import { session } from "../../../../static/src/ui/bench/session.ts";
import { ago, NOW } from "../brewery.ts";

const FILL: Facts = { gyle: "g318", volume_ml: 40_915, best_before: null };

const own = (seq: number, kind: Kind, subject: string, facts: Facts, more = {}): OwnEntry => ({
  entry: {
    id: `e${seq}`,
    device: "d",
    seq,
    kind,
    subject,
    happened_at: ago(0, 1),
    person: "Ann",
    facts,
    rules: 1,
  },
  where: "phone",
  savedAt: ago(0, 1),
  undone: false,
  ...more,
});

const fills = (...entries: OwnEntry[]) =>
  session([...entries].reverse(), "fill", "g318", NOW).map(({ number, entries: ids }) => [
    number,
    ...ids,
  ]);

test("the last fill stands first; another gyle's and another job's are not here", () => {
  assert.deepEqual(
    fills(
      own(1, "filled", "117", FILL),
      own(2, "washed", "118", {}),
      own(3, "filled", "119", { ...FILL, gyle: "g319" }),
      own(4, "filled", "120", FILL),
    ),
    [
      ["120", "e4"],
      ["117", "e1"],
    ],
  );
});

test("what was undone is gone, and yesterday's too", () => {
  const old = own(1, "filled", "117", FILL);
  old.entry.happened_at = ago(0, 13);
  assert.deepEqual(fills(old, own(2, "filled", "118", FILL, { undone: true })), []);
});

test("a container entered on the spot goes with its fill", () => {
  const entered = own(1, "registered", "77", { kind: "firkin", capacity_ml: 40_915 });
  assert.deepEqual(fills(entered, own(2, "filled", "77", FILL)), [["77", "e1", "e2"]]);
});

test("after a wrong number it stands under the right one, the last correction counting", () => {
  assert.deepEqual(
    fills(
      own(1, "filled", "117", FILL),
      own(2, "renumbered", "117", { target: "e1", to: "118" }),
      own(3, "renumbered", "117", { target: "e1", to: "119" }),
      own(4, "renumbered", "117", { target: "e1", to: "120" }, { undone: true }),
    ),
    [["119", "e1"]],
  );
});
