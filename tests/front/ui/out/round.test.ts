// The round: the order of stops, what is loaded first, what is expected back.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Brewery, Customer } from "../../../../static/src/domain/records.ts";
import type { Stop } from "../../../../static/src/ui/out/drop/drops.ts";
import {
  backWords,
  loadOrder,
  promisedToday,
  roundOf,
  turnWords,
} from "../../../../static/src/ui/out/drop/round.ts";
import { holdings } from "../../../../static/src/ui/out/holdings.ts";
import { ago, container, FIRKIN, NOW, type Told } from "../brewery.ts";

/** A road that runs east from the brewery; `along` in hundredths of a degree, about 650 m each. */
const at = (along: number) => ({
  latitude_e6: 54_000_000,
  longitude_e6: -2_000_000 + along * 10_000,
});
const customer = (name: string, along: number | null, promised_on: string | null = null) => {
  const mark = { since: ago(2), entry: "e", by: "Ann", inferred: false };
  const asked = { ...mark, words: "", outcome: null, promised_on, ask_again_on: null };
  return {
    fields: { name, ...(along === null ? {} : { map: at(along) }) },
    set_by: {},
    chase: promised_on === null ? null : asked,
  } as Customer;
};
const stop = (customer: string, ...numbers: string[]): Stop => ({
  id: `drop ${customer}`,
  customer,
  numbers,
  fields: { customer, numbers },
  set_by: { customer: ago(1), numbers: ago(1) },
});
const TODAY = "2026-11-25";
const customers = new Map([
  ["far", customer("Ferry House", 30)],
  ["none", customer("Sluice", null)],
  ["near", customer("Lantern", 10, TODAY)],
  ["mid", customer("Tallow House", 20)],
]);
const stops = [stop("far", "101"), stop("none", "104"), stop("near", "102", "103"), stop("mid")];
const brewery: Brewery = { fields: { name: "Wold", map: at(0) }, set_by: {} };
const sent = (days: number, customer: string, due_on: string | null): Told => [
  ago(days),
  "sent",
  { customer, due_on },
];

test("stops along a road are made along the road; one with no place comes last and says so", () => {
  const { turns, backM } = roundOf(stops, [], customers, brewery);
  const order = turns.map(({ stop }) => stop.customer);
  // There and back is as long either way round.
  assert.ok(["near mid far none", "far mid near none"].includes(order.join(" ")), `${order}`);
  assert.equal(turns.at(-1)?.legM, null);
  assert.match(turnWords(turns.at(-1) as never, null, undefined, NOW), /No place on the map\.$/);
  const ways = turns.slice(0, 3).map(({ legM }) => legM ?? 0);
  assert.equal(backM, order[2] === "far" ? ways.reduce((sum, leg) => sum + leg) : ways[1]);
});

test("what is dropped last is loaded first, and nothing is not loaded", () => {
  const { turns } = roundOf(stops, [], customers, brewery);
  const unloaded = turns.map(({ stop }) => stop.customer).filter((one) => one !== "mid");
  assert.deepEqual(
    loadOrder(turns, []).map(({ customer }) => customer),
    unloaded.reverse(),
  );
});

/** A stop that was handed over at a moment of today, by the order key of that entry. */
const made = (customer: string, at: string): Stop => {
  const one = stop(customer);
  return { ...one, set_by: { ...one.set_by, handed_over_at: at } };
};

test("what is left of a round begins at the last stop that has a place, and is loaded already", () => {
  const left = [stop("near", "102"), stop("far", "101")];
  const done = [made("none", ago(0)), made("mid", ago(0.1))];
  const { from, turns, backM } = roundOf(left, done, customers, brewery);
  assert.equal(from?.customer, "mid");
  assert.deepEqual(
    turns.map(({ stop }) => stop.customer),
    ["far", "near"],
  );
  // A tenth of a degree of longitude on and two back; the last is the way home to the brewery.
  const [on, over] = turns.map(({ legM }) => legM ?? 0) as [number, number];
  assert.ok(Math.abs(over - 2 * on) < 20 && Math.abs(on - (backM ?? 0)) < 20, `${on} ${over}`);
  assert.match(
    turnWords(turns[0] as never, "Tallow House", undefined, NOW),
    /from Tallow House\.$/,
  );
  assert.deepEqual(loadOrder(turns, done), []);
});

test("a drop begun after the last was handed over is loaded; where all are, at the brewery", () => {
  const done = [made("mid", ago(0.1))];
  const later = (one: Stop): Stop => ({ ...one, set_by: { customer: ago(0) } });
  const [added, empty] = [later(stop("far", "101")), later(stop("none"))];
  const one = roundOf([stop("near", "102"), added], done, customers, brewery);
  assert.equal(one.from?.customer, "mid");
  assert.deepEqual(loadOrder(one.turns, done), [added]);
  assert.equal(roundOf([added], done, customers, brewery).from, null);
  // With nothing to drop it is a way to collect, begun on the road.
  assert.equal(roundOf([empty], done, customers, brewery).from?.customer, "mid");
});

test("with no brewery on the map the first way is not known", () => {
  const { turns, backM } = roundOf(stops, [], customers, undefined);
  assert.equal(backM, null);
  assert.deepEqual([turns[0]?.legM, turns[0]?.placed], [null, true]);
  assert.doesNotMatch(turnWords(turns[0] as never, "the brewery", undefined, NOW), /km/);
});

test("more stops than one round can have keep their order", () => {
  const many = Array.from({ length: 61 }, (_, n) => ({ ...stop("near"), id: `drop ${n}` }));
  const { turns, worked } = roundOf(many, [], customers, brewery);
  assert.equal(worked, null);
  assert.deepEqual(
    turns.map(({ stop }) => stop.id),
    many.map(({ id }) => id),
  );
});

test("a stop says what to drop, what is overdue there, what is promised, and the way", () => {
  const away = holdings(
    [
      container("111", FIRKIN, sent(60, "near", "2026-11-01")),
      container("112", FIRKIN, sent(50, "near", "2026-11-20")),
      container("113", FIRKIN, sent(3, "near", "2026-12-20")),
    ],
    customers,
    NOW,
  );
  const turn = { stop: stop("near", "102", "103"), legM: 4249, placed: true };
  assert.equal(
    turnWords(turn, "the brewery", away[0], NOW).replaceAll("\u00a0", " "),
    "Drop 102 and 103. 3 containers of ours there; 111 and 112 are overdue. Promised for today. " +
      "4.2 km from the brewery.",
  );
  assert.equal(backWords(undefined, NOW), "None of ours there.");
});

test("who promised for today and is not gone to is told", () => {
  const all = holdings([container("111", FIRKIN, sent(3, "near", null))], customers, NOW);
  assert.deepEqual(
    promisedToday(all, [stop("far")], NOW).map((one) => one.customer),
    ["near"],
  );
  assert.deepEqual(promisedToday(all, [stop("near")], NOW), []);
  assert.deepEqual(promisedToday(all, [], ago(-1)), []);
});
