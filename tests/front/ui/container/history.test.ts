// The history of a container, from what the brewery tells and what still waits on the phone.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Facts, Kind, MadeEntry } from "../../../../static/src/domain/entries.ts";
import type { OwnEntry } from "../../../../static/src/store/book.ts";
import { historyOf, type Told } from "../../../../static/src/ui/container/history.ts";
import { ago } from "../brewery.ts";

const made = (seq: number, kind: Kind, days: number, facts: Facts = {}): MadeEntry => ({
  id: `e${seq}`,
  device: "d",
  seq,
  kind,
  subject: "117",
  happened_at: ago(days),
  person: "Ann",
  facts,
  rules: 1,
});

const told = (entry: MadeEntry, dropped_by: string | null = null): Told => ({
  ...entry,
  effective_at: entry.happened_at,
  counts_for: dropped_by === null ? entry.subject : null,
  dropped_by,
});

const own = (entry: MadeEntry, more: Partial<OwnEntry> = {}): OwnEntry => ({
  entry,
  where: "phone",
  savedAt: entry.happened_at,
  undone: false,
  ...more,
});

const washed = made(1, "washed", 3);
const filled = made(2, "filled", 2);

const shown = (brewery: readonly Told[] | null, mine: readonly OwnEntry[]) =>
  historyOf("117", brewery, mine).map(({ entry, where, undone, countsFor }) =>
    [entry.id, where, undone ? "undone" : countsFor].join(" "),
  );

test("the newest stands first, and what both know stands once", () => {
  assert.deepEqual(
    shown(
      [told(washed), told(filled)],
      [own(filled, { where: "brewery" }), own(made(3, "tapped", 1))],
    ),
    ["e3 phone 117", "e2 brewery 117", "e1 brewery 117"],
  );
});

test("without the brewery there is what the phone has", () => {
  assert.deepEqual(shown(null, [own(filled)]), ["e2 phone 117"]);
});

test("an undo made here shows at once, before the brewery has worked it out", () => {
  const undo = own(made(3, "voided", 0, { target: "e1" }));
  assert.deepEqual(shown([told(washed)], [undo]), ["e3 phone 117", "e1 brewery undone"]);
  const undoUndone = own(made(4, "voided", 0, { target: "e3" }));
  assert.deepEqual(shown([told(washed)], [undoUndone, { ...undo, undone: true }]), [
    "e4 phone 117",
    "e3 phone undone",
    "e1 brewery 117",
  ]);
});

test("so does a wrong number", () => {
  const move = own(made(3, "renumbered", 0, { target: "e2", to: "118" }));
  assert.deepEqual(shown([told(filled)], [move]), ["e3 phone 117", "e2 brewery 118"]);
});

test("what the brewery has dropped is undone", () => {
  assert.deepEqual(shown([told(washed, "e9")], []), ["e1 brewery undone"]);
});
