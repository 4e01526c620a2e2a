// What does not have the form agreed on is no answer at all.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blank } from "../../../static/src/domain/standing.ts";
import {
  isAnotherLedger,
  pullAnswer,
  pushAnswer,
  snapshotHead,
  snapshotPage,
} from "../../../static/src/sync/forms.ts";

const row = { type: "container", id: "1", position: 3, doc: blank("1") };
const push = {
  epoch: "e",
  head: 9,
  server_time: "2026-03-02T09:00:00.000Z",
  results: [
    { id: "a", verdict: "accepted", position: 7 },
    { id: "b", verdict: "refused", problem: { title: "Malformed" } },
    { id: "c", verdict: "held" },
    { id: "d", verdict: "later" },
  ],
};
const pull = { epoch: "e", since: 2, next: 3, more: true, head: 9, rules: 1, rows: [row] };
const last = { ...pull, next: 9, more: false, checksum: 12 };
const IDS = ["a", "b", "c", "d"];

test("whole answers are read", () => {
  assert.deepEqual(pushAnswer(push, IDS)?.answers, [
    { id: "a", verdict: "accepted", position: 7 },
    { id: "b", verdict: "refused", problem: { title: "Malformed" } },
    { id: "c", verdict: "held", problem: {} },
    { id: "d", verdict: "later" },
  ]);
  assert.equal(pullAnswer(pull, 2)?.next, 3);
  assert.equal(pullAnswer(last, 2)?.checksum, 12);
  assert.deepEqual(snapshotHead({ epoch: "e", position: 4, rules: 1 }), {
    epoch: "e",
    position: 4,
    rules: 1,
  });
  assert.equal(snapshotPage({ rows: [row], next: "container:1" }, null)?.next, "container:1");
});

test("a verdict of a later release leaves the entry where it is", () => {
  const results = [{ id: "a", verdict: "pondered" }];
  assert.deepEqual(pushAnswer({ ...push, results }, ["a"])?.answers, [
    { id: "a", verdict: "later" },
  ]);
});

test("no half of a push's answer is applied", () => {
  const [one, ...others] = push.results;
  const wrong: unknown[] = [
    undefined,
    null,
    "ok",
    [],
    { ...push, epoch: 1 },
    { ...push, server_time: "soon" },
    { ...push, results: others },
    { ...push, results: [...others, one] },
    { ...push, results: [{ id: "a", verdict: "accepted" }, ...others] },
    { ...push, results: [{ id: "a", verdict: "accepted", position: -1 }, ...others] },
    { ...push, results: [{ id: "a" }, ...others] },
    { ...push, results: [null, ...others] },
  ];
  for (const body of wrong) assert.equal(pushAnswer(body, IDS), null, JSON.stringify(body));
});

test("a pull that answers another question, or goes nowhere, is no answer", () => {
  const wrong: unknown[] = [
    undefined,
    {},
    { ...pull, since: 1 },
    { ...pull, next: 1 },
    { ...pull, next: 2, rows: [] },
    { ...pull, more: "yes" },
    { ...pull, rules: undefined },
    { ...pull, rows: [{ ...row, type: undefined }] },
    { ...pull, rows: [{ ...row, doc: null }] },
    { ...pull, rows: [{ ...row, position: 1.5 }] },
    { ...last, checksum: undefined },
  ];
  for (const body of wrong) assert.equal(pullAnswer(body, 2), null, JSON.stringify(body));
});

test("a snapshot's page that leads nowhere is no answer", () => {
  assert.equal(snapshotPage({ rows: [row], next: "container:1" }, "container:1"), null);
  assert.equal(snapshotPage({ rows: [], next: "container:1" }, null), null);
  assert.equal(snapshotPage({ rows: [row] }, null), null);
  assert.deepEqual(snapshotPage({ rows: [], next: null }, null), { rows: [], next: null });
  assert.equal(snapshotHead({ epoch: "e", position: "4", rules: 1 }), null);
});

test("another ledger is told by its problem type, not by the status alone", () => {
  assert.equal(isAnotherLedger(409, { type: "/problems/another-ledger" }), true);
  assert.equal(isAnotherLedger(409, { type: "https://x.example/problems/another-ledger" }), true);
  assert.equal(isAnotherLedger(409, { type: "about:blank" }), false);
  assert.equal(isAnotherLedger(409, undefined), false);
  assert.equal(isAnotherLedger(200, { type: "/problems/another-ledger" }), false);
});
