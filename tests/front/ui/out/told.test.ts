// What a customer says of its containers on its own page, wherever somebody looks for it; and the
// link to that page.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";
import type { Customer } from "../../../../static/src/domain/records.ts";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import { callReason } from "../../../../static/src/ui/out/call-words.ts";
import { callsToday } from "../../../../static/src/ui/out/calls.ts";
import { backWords } from "../../../../static/src/ui/out/drop/round.ts";
import { holdings, saidEmpty } from "../../../../static/src/ui/out/holdings.ts";
import { newLink } from "../../../../static/src/ui/out/new-link.ts";
import { awayWords, holdingWords, saidWords } from "../../../../static/src/ui/out/reasons.ts";
import { placeFacet } from "../../../../static/src/ui/words/standing.ts";
import { ago, container, FIRKIN, known, NOW, type Told } from "../brewery.ts";

const SENT: Told = [ago(50), "sent", { customer: "c1", due_on: "2026-11-20" }];
const says = (days: number, word: string, customer = "c1"): Told => [
  ago(days),
  "told",
  { customer, says: word },
];
const out = (number: string, ...told: Told[]): Standing => container(number, FIRKIN, SENT, ...told);
const customers = new Map<string, Customer>([
  ["c1", { fields: { name: "Lantern" }, set_by: {}, chase: null }],
]);
const FLEET = [
  out("101", says(1, "empty")),
  out("102", says(2, "not_here")),
  out("103"),
  out("104", says(3, "not_here"), says(1, "empty")),
  out("105", says(3, "empty"), says(1, "here")),
];
const [holding] = holdings(FLEET, customers, NOW);
assert.ok(holding);

test("the last word of each stands, and what was taken back is not said", () => {
  assert.deepEqual(
    saidEmpty(holding).map(({ standing }) => standing.number),
    ["101", "104"],
  );
  assert.equal(
    saidWords(holding),
    "They say: 101 and 104 empty, ready to collect. They say: 102 not here.",
  );
});

test("it is said where it is decided what to collect and whom to call", () => {
  const said = saidWords(holding);
  assert.ok(backWords(holding, NOW).includes(said));
  assert.ok(holdingWords(holding, NOW).includes(said));
  const [call] = callsToday([holding], new Map(), NOW, {}).today;
  assert.ok(call);
  assert.ok(callReason(call, NOW).includes(said));
});

test("it is said of the container itself", () => {
  const [first] = holding.away;
  assert.ok(first);
  assert.match(awayWords(first, known), /They say: empty, ready to collect\.$/);
  assert.match(placeFacet(out("102", says(2, "not_here")), known)?.says ?? "", /they say not here/);
});

test("it is over once the container is back, and another customer has nothing to say of it", () => {
  const back = out("101", says(2, "empty"), [ago(1), "returned", {}]);
  assert.equal(back.trip, null);
  const [other] = holdings([out("101", says(2, "empty", "c2"))], customers, NOW);
  assert.equal(other && saidWords(other), "");
});

test("a link holds the customer's id and 160 random bits, and the ledger keeps its hash", async () => {
  const customer = "019ab3c4-0000-7000-8000-00000000c001";
  const made = await Promise.all(Array.from({ length: 50 }, () => newLink(customer)));
  for (const { token, hash } of made) {
    assert.match(token, /^[\w-]{48}$/);
    const bytes = Buffer.from(token, "base64url");
    assert.equal(bytes.subarray(0, 16).toString("hex"), customer.replaceAll("-", ""));
    assert.equal(bytes.length, 36);
    assert.equal(hash, createHash("sha256").update(token).digest("hex"));
  }
  assert.equal(new Set(made.map(({ token }) => token)).size, 50);
});
