// Who has the containers, in which order, and what is said of them.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Customer } from "../../../../static/src/domain/records.ts";
import { holdings } from "../../../../static/src/ui/out/holdings.ts";
import {
  awayTitle,
  awayWords,
  byKindWords,
  holdingWords,
  totalWords,
} from "../../../../static/src/ui/out/reasons.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW, type Told } from "../brewery.ts";

const sent = (days: number, customer: string, due_on: string | null): Told => [
  ago(days),
  "sent",
  { customer, due_on },
];
const out = (number: string, kind: Told, ...told: Told[]) => container(number, kind, ...told);
const customers = new Map<string, Customer>([
  ["c1", { fields: { name: "Lantern" }, set_by: {}, chase: null }],
  ["c2", { fields: { name: "Sluice and Lamp" }, set_by: {}, chase: null }],
  ["c3", { fields: { name: "Tallow House" }, set_by: {}, chase: null }],
]);
const held = (...containers: ReturnType<typeof container>[]) =>
  holdings(containers, customers, NOW);
const chased = (promised_on: string | null): Map<string, Customer> => {
  const mark = { since: ago(10), entry: "e", by: "Ann", inferred: false };
  const chase = { ...mark, words: "", outcome: null, promised_on, ask_again_on: null };
  return new Map([["c1", { fields: { name: "Lantern" }, set_by: {}, chase }]]);
};

test("customers with something overdue come first, then by the longest days out", () => {
  const found = held(
    out("1", FIRKIN, sent(90, "c1", null)),
    out("2", FIRKIN, sent(30, "c2", "2026-11-20")),
    out("3", FIRKIN, sent(20, "c3", "2026-11-24")),
    container("4", FIRKIN),
  );
  assert.deepEqual(
    found.map(({ customer }) => customer),
    ["c2", "c3", "c1"],
  );
});

test("with one customer the latest comes first", () => {
  const [holding] = held(
    out("1", FIRKIN, sent(3, "c1", "2026-12-30")),
    out("2", FIRKIN, sent(30, "c1", "2026-11-24")),
    out("3", FIRKIN, sent(60, "c1", "2026-11-01")),
  );
  assert.deepEqual(
    holding?.away.map(({ standing }) => standing.number),
    ["3", "2", "1"],
  );
  assert.equal(holding?.overdue, 2);
  assert.equal(holding?.longest, 60);
});

test("the kind there is most of is said first", () => {
  const [holding] = held(
    out("K1", KEG, sent(3, "c1", null)),
    out("1", FIRKIN, sent(3, "c1", null)),
    out("2", FIRKIN, sent(3, "c1", null)),
    out("99", sent(3, "c1", null)),
  );
  assert.equal(byKindWords(holding?.away ?? []), "2 firkins, 1 × 30 L keg and 1 container");
});

test("a customer is said in one or two sentences", () => {
  const words = (...containers: ReturnType<typeof container>[]) => {
    const [holding] = held(...containers);
    assert.ok(holding);
    return holdingWords(holding, NOW);
  };
  assert.equal(words(out("1", FIRKIN, sent(3, "c1", null))), "1 firkin.");
  assert.equal(words(out("1", FIRKIN, sent(60, "c1", "2026-11-01"))), "1 firkin, overdue.");
  assert.equal(
    words(
      out("1", FIRKIN, sent(60, "c1", "2026-11-01")),
      out("2", FIRKIN, sent(3, "c1", "2026-12-30")),
    ),
    "2 firkins, 1 overdue.",
  );
  assert.equal(
    words(
      out("1", FIRKIN, sent(60, "c1", "2026-11-01")),
      out("2", FIRKIN, sent(59, "c1", "2026-11-02")),
    ),
    "2 firkins, all overdue.",
  );
});

test("a promise is told as due or as not kept, and being asked while overdue", () => {
  const words = (promised: string | null) => {
    const [holding] = holdings(
      [out("1", FIRKIN, sent(60, "c1", "2026-11-01"))],
      chased(promised),
      NOW,
    );
    assert.ok(holding);
    return holdingWords(holding, NOW);
  };
  assert.match(words("2026-11-20"), /Promised for 20 Nov, not kept\.$/);
  assert.match(words("2026-11-26"), /Promised for tomorrow\.$/);
  assert.match(words(null), /Last asked 15 Nov\.$/);
});

test("what was said before a container went out is not said of it", () => {
  const containers = [out("1", FIRKIN, sent(6, "c1", "2026-11-21"))];
  const [holding] = holdings(containers, chased("2026-11-20"), NOW);
  assert.ok(holding);
  assert.equal(holdingWords(holding, NOW), "1 firkin, overdue.");
});

test("a container that is away says its beer, its days and when it is due", () => {
  const [holding] = held(
    out("117", FIRKIN, filled(40, null), sent(30, "c1", "2026-11-21"), [ago(2), "missing", {}]),
  );
  const away = holding?.away[0];
  assert.ok(away);
  assert.equal(awayTitle(away), "Firkin 117");
  assert.equal(
    awayWords(away, known),
    "Oystercatcher. Out 30 days since 26 Oct, 4 days late. Down as missing.",
  );
});

test("the total counts customers and containers", () => {
  assert.equal(
    totalWords(held(out("1", FIRKIN, sent(3, "c1", null)), out("2", FIRKIN, sent(3, "c1", null)))),
    "1 customer, 2 containers",
  );
});
