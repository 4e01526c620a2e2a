// Going out: what is recorded, what is said before, and which customer is loaded for.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Settings } from "../../../../static/src/domain/figures.ts";
import type { OwnEntry } from "../../../../static/src/store/own-shown.ts";
import { customersLike, latelyMet } from "../../../../static/src/ui/out/customers.ts";
import { nextWeekday, promiseFault } from "../../../../static/src/ui/out/promise.ts";
import { sendDrafts, sendRemarks } from "../../../../static/src/ui/out/send.ts";
import { doneLately } from "../../../../static/src/ui/out/session.ts";
import { ago, container, FIRKIN, filled, known, NOW, type Told } from "../brewery.ts";

const record = { fields: { name: "Lantern", agreed_days: 14 }, set_by: {}, chase: null };
const named = (name: string, more: object = {}) => ({
  fields: { name, ...more },
  set_by: {},
  chase: null,
});
/** A Wednesday. */
const TODAY = "2026-11-25";
const to = { customer: "c1", record, asNew: { kind: "pin", capacity_ml: 20457 } };
const remarks = (fields: object, settings: Settings, ...told: Told[]) =>
  sendRemarks(
    container("117", ...told),
    { customer: "c1", record: { ...record, fields } },
    known,
    settings,
  ).map(({ says, tone }) => ({ says: says.replaceAll("\u00a0", " "), tone }));
const said = (...told: Told[]) => remarks({}, {}, ...told).map(({ says }) => says);

test("it is due back by what the customer agreed to", () => {
  assert.deepEqual(sendDrafts("117", container("117", FIRKIN), to, NOW, {}), [
    { kind: "sent", subject: "117", facts: { customer: "c1", due_on: "2026-12-09" } },
  ]);
});

test("where nothing is agreed it is due back by the brewery's own days", () => {
  const nobody = { ...to, record: undefined };
  const [sent] = sendDrafts("117", container("117", FIRKIN), nobody, NOW, { agreed_days: 10 });
  assert.equal(sent?.facts["due_on"], "2026-12-05");
});

test("a number not on record is entered first", () => {
  assert.deepEqual(
    sendDrafts("777", null, to, NOW, {}).map(({ kind }) => kind),
    ["registered", "sent"],
  );
});

test("ready says so, not ready says until when, and past says so", () => {
  assert.deepEqual(said(FIRKIN, filled(20, "2026-12-18")), [
    "Oystercatcher, gyle 318, 40.9 L.",
    "Ready, best before 18 Dec: 23 days left.",
  ]);
  assert.equal(said(FIRKIN, filled(5, null))[1], "Not ready until Fri 12:00.");
  assert.equal(said(FIRKIN, filled(50, "2026-11-20"))[1], "Past its time (20 Nov).");
});

test("too little life is said: what this customer expects, or what customers do", () => {
  const short = filled(20, "2026-12-04");
  const life = (fields: object) => remarks(fields, {}, FIRKIN, short)[1];
  const left = "Ready, best before 4 Dec: 9 days left";
  assert.deepEqual(life({}), { says: `${left}, and 14 are expected.`, tone: "look" });
  assert.deepEqual(life({ expected_days: 10 }), {
    says: `${left}, and 10 are expected.`,
    tone: "look",
  });
  assert.deepEqual(life({ expected_days: 9 }), { says: `${left}.`, tone: "fine" });
});

test("it is ready by the brewery's own figures, as in the Cellar", () => {
  const own = { conditioning_q10: 2.5, conditioning_reference_c: 20 };
  assert.match(remarks({}, own, FIRKIN, filled(8, null))[1]?.says ?? "", /^Not ready until /);
  assert.equal(remarks({}, {}, FIRKIN, filled(8, null))[1]?.says, "Ready.");
});

test("what speaks against it is said: empty, held, vented, out already", () => {
  assert.deepEqual(said(FIRKIN), ["No beer on record in it."]);
  const ready = filled(20, null);
  assert.match(said(FIRKIN, ready, [ago(1), "set_aside", { why: "hazy" }]).at(-1) ?? "", /hazy\.$/);
  assert.equal(
    said(FIRKIN, ready, [ago(1), "vented", { spile: "soft" }]).at(-1),
    "Vented already.",
  );
  const sent = (customer: string): Told => [ago(1), "sent", { customer, due_on: null }];
  assert.equal(said(FIRKIN, ready, sent("c1")).at(-1), "Down as out at Lantern already.");
  assert.equal(said(FIRKIN, ready, sent("c2")).at(-1), "Still down as out at Sluice and Lamp.");
});

test("customers in use are found by part of their name, those sent to lately first", () => {
  const customers = new Map([
    ["a", named("Tallow House", { delivery_day: 0 })],
    ["b", named("Lantern")],
    ["c", named("Old Tallow", { retired: true })],
    ["d", named("Ninepin Club")],
  ]);
  const ids = (words: string) => customersLike(customers, words, ["d"], TODAY).map(({ id }) => id);
  assert.deepEqual(ids(""), ["d", "a", "b"]);
  assert.deepEqual(ids("tallow"), ["a"]);
  assert.equal(customersLike(customers, "tall", [], TODAY)[0]?.says, "Delivery Monday");
});

test("the next to be delivered to stand before the others, and those of no day last", () => {
  const customers = new Map([
    ["none", named("A")],
    ["yesterday", named("B", { delivery_day: 1 })],
    ["tomorrow", named("C", { delivery_day: 3 })],
    ["today", named("D", { delivery_day: 2 })],
  ]);
  const found = customersLike(customers, "", [], TODAY);
  assert.deepEqual(
    found.map(({ id, says }) => [id, says]),
    [
      ["today", "Delivery today"],
      ["tomorrow", "Delivery tomorrow"],
      ["yesterday", "Delivery Tuesday"],
      ["none", ""],
    ],
  );
});

test("the next delivery is after today, never today", () => {
  assert.equal(nextWeekday("2026-11-25", 2), "2026-12-02"); // a Wednesday
  assert.equal(nextWeekday("2026-11-25", 3), "2026-11-26");
  assert.equal(nextWeekday("2026-11-29", 0), "2026-11-30"); // from Sunday to Monday
});

test("a promise is for a day that is still to come, or today", () => {
  assert.equal(promiseFault("2026-11-25", "2026-11-25"), null);
  assert.match(promiseFault("2026-11-24", "2026-11-25") ?? "", /gone by/);
  assert.match(promiseFault("", "2026-11-25") ?? "", /Choose/);
});

const own = (
  seq: number,
  kind: "sent" | "registered",
  hours: number,
  undone = false,
): OwnEntry => ({
  entry: {
    id: `e${seq}`,
    device: "d",
    seq,
    kind,
    subject: "117",
    happened_at: ago(0, hours),
    person: "",
    facts: { customer: "c1" },
    rules: 1,
  },
  where: "phone",
  savedAt: NOW,
  undone,
});

test("today's list has what stands, with the registration of the same tap", () => {
  const all = [
    own(5, "sent", 13),
    own(4, "sent", 1, true),
    own(3, "sent", 2),
    own(2, "registered", 2),
  ];
  assert.deepEqual(
    doneLately(all, "sent", NOW).map(({ entries }) => entries),
    [["e2", "e3"]],
  );
  assert.deepEqual(
    doneLately(all, "sent", NOW, () => false),
    [],
  );
});

test("who was just entered, or sent to last, is offered first", () => {
  const made = (subject: string, facts: object, undone = false): OwnEntry => {
    const one = own(1, "sent", 1, undone);
    return { ...one, entry: { ...one.entry, kind: "customer", subject, facts } };
  };
  const all = [
    made("new", { name: "Tallow Chandlers" }),
    made("rung", { phone: "01234 567890" }),
    own(4, "sent", 1),
    made("slip", { name: "Talow" }, true),
    own(3, "sent", 2),
  ];
  assert.deepEqual(latelyMet(all), ["new", "c1"]);
  const customers = new Map([
    ["c1", named("Lantern")],
    ["new", named("Tallow Chandlers")],
    ["other", named("Anchor", { delivery_day: 2 })],
  ]);
  assert.deepEqual(
    customersLike(customers, "", latelyMet(all), TODAY).map(({ id }) => id),
    ["new", "c1", "other"],
  );
});
