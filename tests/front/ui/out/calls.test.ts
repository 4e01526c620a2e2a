// Whom to call: in what order, who is left in peace, and the text with the numbers in it.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { TripCounts } from "../../../../static/src/domain/fleet/trip-counts.ts";
import type { Chase, Customer } from "../../../../static/src/domain/records.ts";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import {
  CALL_TEXT,
  filledIn,
  mailHref,
  namesAt,
  smsHref,
  unknownNames,
} from "../../../../static/src/ui/out/call-text.ts";
import { callReason, earlierWords, restWords } from "../../../../static/src/ui/out/call-words.ts";
import { callsToday } from "../../../../static/src/ui/out/calls.ts";
import { holdings } from "../../../../static/src/ui/out/holdings.ts";
import { ago, container, FIRKIN, known, NOW } from "../brewery.ts";

const out = (number: string, customer: string, days: number, due: string | null): Standing =>
  container(number, FIRKIN, [ago(days), "sent", { customer, due_on: due }]);

const FLEET = [
  out("101", "c1", 120, "2026-09-09"), // long late
  out("102", "c1", 20, "2026-12-17"), // in time
  out("103", "c2", 40, "2026-11-23"), // late, but its own trips end within days
  out("104", "c3", 30, "2026-12-09"), // in time
];

/** Of forty, all but two were back within 60 days. */
const TRIPS = new Map<string, TripCounts>([
  ["c1", { ended: { firkin: [[0, 30, 4, 0]] }, begun: {} }],
  ["c2", { ended: { firkin: [[0, 45, 20, 0]] }, begun: {} }],
  ["c3", { ended: { "": [[0, 60, 16, 2]] }, begun: {} }],
]);

const customers = (chase: Partial<Chase> = {}): Map<string, Customer> => {
  const mark = { since: ago(8), entry: "e9", by: "Ann", inferred: false };
  const said = { ...mark, words: "", outcome: null, promised_on: null, ask_again_on: null };
  return new Map([
    [
      "c1",
      {
        fields: { name: "Lantern", contact: "Gam", delivery_day: 4 },
        set_by: {},
        chase: { ...said, ...chase },
      },
    ],
    ["c2", { fields: { name: "Sluice and Lamp" }, set_by: {}, chase: null }],
    ["c3", { fields: { name: "Tallow House" }, set_by: {}, chase: null }],
  ]);
};

const calls = (chase: Partial<Chase> = {}) =>
  callsToday(holdings(FLEET, customers(chase), NOW), TRIPS, NOW, {});

test("a call before the last is told in a line", () => {
  const said = { outcome: "no_answer", promised_on: "2026-11-12", words: "in the yard" } as const;
  assert.equal(earlierWords(said, NOW), "Nobody answered. Promised for 12 Nov. “in the yard”");
  assert.equal(earlierWords({ outcome: null, promised_on: null, words: "" }, NOW), "");
});

test("a deposit that is held makes a call worth less, a hired container more", () => {
  const worth = (fields: Customer["fields"], hire: object | null) => {
    const one = { ...out("101", "c1", 60, "2026-10-15"), ...(hire && { hire }) } as Standing;
    const who = new Map([["c1", { fields, set_by: {}, chase: null } as Customer]]);
    return callsToday(holdings([one], who, NOW), TRIPS, NOW, {}).today[0]?.worth.result.worth_pence;
  };
  const plain = worth({}, null) ?? 0;
  assert.ok((worth({ deposits: { firkin: 2000 } }, null) ?? 0) < plain);
  assert.ok((worth({}, { pence_a_day: 50, due_on: "2027-01-01" }) ?? 0) > plain);
});

test("what a call is worth most comes first, and who is in time is not called", () => {
  const { today, resting } = calls();
  assert.deepEqual(
    today.map(({ holding }) => holding.customer),
    ["c1"],
  );
  assert.deepEqual(resting, []);
  const own = { call_worth_least_pounds: 0 };
  const all = callsToday(holdings(FLEET, customers(), NOW), TRIPS, NOW, own);
  assert.deepEqual(
    all.today.map(({ worth }) => worth.result.judged_by),
    ["all", "own", "own"],
  );
});

test("the reason says how late, how likely they come by themselves, and what was said", () => {
  const [first] = calls().today;
  assert.ok(first);
  assert.equal(
    callReason(first, NOW),
    "2 firkins, 1 overdue, the longest out 120 days. Nothing has come back after so long. Last asked 17 Nov.",
  );
});

test("a likelihood is said of those for which there is one, and apart from it that of the rest", () => {
  const chance = (...fleet: Standing[]) => {
    const found = callsToday(holdings(fleet, customers(), NOW), TRIPS, NOW, {});
    const [call] = found.today;
    assert.ok(call);
    return /(?:Counted|Nothing).*?(?= Last asked)/.exec(callReason(call, NOW))?.[0];
  };
  const long = out("101", "c1", 120, "2026-09-09");
  const some = out("102", "c1", 40, "2026-11-24");
  const more = out("105", "c1", 46, "2026-11-24");
  assert.equal(chance(some), "Counted on to be back by itself in a fortnight: 53 %.");
  assert.equal(chance(some, more), "Counted on to be back by itself in a fortnight: 51 % or more.");
  assert.equal(
    chance(some, long),
    "Counted on to be back by itself in a fortnight: 51 % for 1 of them. Nothing has come back after so long as the other one.",
  );
  assert.equal(
    chance(some, long, out("106", "c1", 130, "2026-09-09")),
    "Counted on to be back by itself in a fortnight: 50 % for 1 of them. Nothing has come back after so long as the other 2.",
  );
});

test("the chance and the money are of the same likelihood", () => {
  // All that were out 30 days are back by day 40; of those out when it fell due, not all so soon.
  const every = new Map<string, TripCounts>([
    ["c1", { ended: { firkin: [[0, 28, 6, 0]], "": [[0, 40, 4, 0]] }, begun: {} }],
    ["c2", { ended: { firkin: [[0, 300, 1, 0]] }, begun: {} }],
  ]);
  const late = holdings([out("101", "c1", 30, "2026-11-09")], customers(), NOW);
  const [call] = callsToday(late, every, NOW, { call_worth_least_pounds: 0 }).today;
  assert.ok(call);
  const [, back] = /fortnight: (\d+) %/.exec(callReason(call, NOW)) ?? [];
  const { worth_pence } = call.worth.result;
  assert.ok(Number(back) < 100, back);
  assert.equal(Math.round(worth_pence / 75), 100 - Number(back));
});

test("a promise or a day to ask again leaves a customer in peace until then", () => {
  const resting = (chase: Partial<Chase>) => {
    const [call] = calls(chase).resting;
    return call === undefined ? "called" : restWords(call, NOW);
  };
  assert.equal(resting({ promised_on: "2026-11-25" }), "Promised for today.");
  assert.equal(resting({ promised_on: "2026-11-24" }), "called");
  assert.equal(resting({ ask_again_on: "2026-11-27" }), "Asked; again on Fri.");
  assert.equal(resting({ ask_again_on: "2026-11-25" }), "called");
});

test("the text has the numbers in it, in the brewery's own words", () => {
  const [holding] = holdings(FLEET, customers(), NOW);
  assert.ok(holding);
  const from = { person: "Ann", brewery: "Tide Mill Brewery" };
  const names = namesAt(holding, { ...known, customers: customers() }, from);
  const text = filledIn(CALL_TEXT.words, names);
  assert.equal(
    text,
    "Hello Gam, you have 2 firkins of ours at Lantern, 1 of them longer than agreed. Their numbers: 101, 102. May we collect them on Fri? Thank you, Tide Mill Brewery",
  );
  assert.equal(filledIn("{numbers} and {nonsense}", names), "101, 102 and {nonsense}");
  assert.deepEqual(unknownNames("{numbers} {nonsense}", CALL_TEXT.holds), ["nonsense"]);
  assert.deepEqual(unknownNames(CALL_TEXT.words, CALL_TEXT.holds), []);
  assert.deepEqual(Object.keys(names).sort(), [...CALL_TEXT.holds].sort());
});

test("the phone's own apps get the text whole", () => {
  assert.equal(smsHref("01632 960 100", "A & B"), "sms:01632960100?body=A%20%26%20B");
  assert.equal(
    mailHref("gam+x@pub.example", "Casks", "A?"),
    "mailto:gam%2Bx@pub.example?subject=Casks&body=A%3F",
  );
});
