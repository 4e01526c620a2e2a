// A drop: what was asked for, and what is recorded and said of deposits when it is handed over.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { DropAsked, DropLine } from "../../../../static/src/domain/record-fields.ts";
import type { Brewery, Customer } from "../../../../static/src/domain/records.ts";
import { depositPence } from "../../../../static/src/ui/out/deposits.ts";
import {
  askedFault,
  askedRemarks,
  madeUpOf,
  withAsked,
} from "../../../../static/src/ui/out/drop/asked-for.ts";
import type { AtTheDoor } from "../../../../static/src/ui/out/drop/at-the-door.ts";
import {
  handedOverWords,
  handOverDrafts,
  othersFault,
  takenAlong,
} from "../../../../static/src/ui/out/drop/hand-over.ts";
import { noteOf } from "../../../../static/src/ui/out/drop/note.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW } from "../brewery.ts";

const customer = (fields: Customer["fields"]): Customer => ({ fields, set_by: {}, chase: null });
const brewery: Brewery = { fields: { deposits: { firkin: 1000, pin: 800 } }, set_by: {} };
const line = (number: string, kind: string): DropLine => ({
  number,
  kind,
  beer: "Ember",
  abv_tenths: 38,
  lot: "",
  best_before: null,
  volume_ml: 40_000,
  contains: "",
});

test("a deposit is the one agreed for the kind, else for all, else the brewery's usual one", () => {
  const agreed = customer({ deposits: { firkin: 1500 }, deposit_pence: 500 });
  assert.equal(depositPence("firkin", { customer: agreed, brewery }), 1500);
  assert.equal(depositPence("pin", { customer: agreed, brewery }), 500);
  assert.equal(depositPence("pin", { customer: customer({}), brewery }), 800);
  assert.equal(depositPence("keg_30", { customer: customer({}), brewery }), 0);
  assert.equal(depositPence("firkin", { customer: customer({ deposit_pence: 0 }), brewery }), 0);
  assert.equal(depositPence(null, { customer: undefined, brewery: undefined }), 0);
});

const DOOR: AtTheDoor = {
  left: [],
  empties: ["111"],
  others: "",
  counted: "",
  takenBy: "",
  signature: "",
  note: "",
};

const handed = (who: Customer, counted: string) => {
  const stop = { id: "d1", customer: "c1", numbers: ["101", "K1"], fields: {}, set_by: {} };
  const sent = { customer: "c1", due_on: null };
  const standings = new Map([
    ["101", container("101", FIRKIN)],
    ["K1", container("K1", KEG)],
    ["111", container("111", FIRKIN, [ago(9), "sent", sent])],
  ]);
  const drafts = handOverDrafts({
    stop,
    door: { ...DOOR, counted },
    lines: [line("101", "firkin"), line("K1", "keg_30")],
    customer: who,
    brewery,
    standings,
    heldBefore: 1,
    settings: {},
    now: NOW,
  });
  const drop = drafts.find(({ kind }) => kind === "drop");
  assert.ok(drop);
  return drop.facts;
};

const withOthers = (others: string) =>
  handOverDrafts({
    stop: { id: "d1", customer: "c1", numbers: [], fields: {}, set_by: {} },
    door: { ...DOOR, others },
    lines: [],
    customer: customer({}),
    brewery,
    standings: new Map([["111", container("111", FIRKIN)]]),
    heldBefore: 5,
    settings: {},
    now: NOW,
  });

test("empties that were typed come along with those that were tapped, each once", () => {
  const drafts = withOthers("111, 112 to 114");
  const [drop] = drafts.filter(({ kind }) => kind === "drop");
  assert.deepEqual(drop?.facts["empties"], ["111", "112", "113", "114"]);
  assert.equal(drop?.facts["held_after"], 1);
  const returned = drafts.filter(({ kind }) => kind === "returned");
  assert.deepEqual(
    returned.map(({ subject }) => subject),
    ["111", "112", "113", "114"],
  );
});

test("what is said of a handing over counts all that one Undo takes back", () => {
  const door = { ...DOOR, empties: ["111"], others: "111, 112", counted: "2" };
  assert.equal(
    handedOverWords(2, takenAlong(door), "Lantern"),
    "2 containers handed over at Lantern, 4 taken along.",
  );
  const none = { ...DOOR, empties: [], others: "", counted: "" };
  assert.equal(
    handedOverWords(1, takenAlong(none), "Lantern"),
    "1 container handed over at Lantern.",
  );
});

test("what cannot be read as a number is a fault in the words it was typed", () => {
  assert.equal(othersFault("111, zz and more"), "Not a number: zz and more.");
  assert.equal(othersFault("12-1; zz"), "Not a number: 12-1 and zz.");
  assert.equal(othersFault(""), null);
  assert.equal(othersFault("111, 112"), null);
});

test("deposits of what is dropped and of the empties told by number are facts of the drop", () => {
  const facts = handed(customer({ deposits: { keg_30: 3000 } }), "2");
  assert.equal(facts["deposits_taken_pence"], 4000);
  assert.equal(facts["deposits_given_back_pence"], 1000);
  const says = noteOf(facts, {}, "Lantern").said.find(({ what }) => what === "Deposits")?.says;
  assert.equal(
    says,
    "£40.00 for these, £10.00 back for empties: £30.00 to pay; what was only counted is reckoned later",
  );
});

test("where more comes back than goes out the note says what is to be given back", () => {
  const says = noteOf(
    { deposits_taken_pence: 1000, deposits_given_back_pence: 2550, handed_over_at: NOW },
    {},
    "Lantern",
  ).said.find(({ what }) => what === "Deposits")?.says;
  assert.equal(says, "£10.00 for these, £25.50 back for empties: £15.50 to give back");
});

test("a brewery that takes no deposits has nothing of them on its note", () => {
  const { said } = noteOf({ handed_over_at: NOW, deposits_taken_pence: 0 }, {}, "Lantern");
  assert.ok(said.every(({ what }) => what !== "Deposits"));
});

const ASKED: DropAsked[] = [{ beer: "b1", kind: "firkin", count: 2 }];
const VAN = new Map(
  [
    container("101", FIRKIN, filled(20, null)),
    container("102", FIRKIN, filled(20, null)),
    container("103", FIRKIN, filled(20, null)),
    container("104", FIRKIN, filled(20, null, "g319")),
    container("K1", KEG, filled(20, null, "g318", 30_000)),
    container("105", FIRKIN),
  ].map((one) => [one.number, one] as const),
);
const said = (number: string, ...numbers: string[]) =>
  askedRemarks(VAN.get(number) ?? null, ASKED, numbers, VAN, known).map(({ says }) => says);

test("another beer than was asked for is warned of, and another size of it", () => {
  assert.deepEqual(said("101"), []);
  assert.deepEqual(said("104"), ["Another beer: they asked for 2 firkins of Oystercatcher."]);
  assert.deepEqual(said("K1"), ["Another size: they asked for 2 firkins of Oystercatcher."]);
});

test("once there is enough of a beer one more is warned of, and one that is on already is not", () => {
  assert.deepEqual(said("103", "101"), []);
  assert.deepEqual(said("103", "101", "102"), [
    "Enough already: they asked for 2 firkins of Oystercatcher.",
  ]);
  assert.deepEqual(said("102", "101", "102"), []);
  assert.equal(madeUpOf(ASKED[0] as DropAsked, ["101", "104", "K1", "102"], VAN, known), 2);
});

test("where nothing was asked for, or nothing is in it, nothing is said of it", () => {
  assert.deepEqual(askedRemarks(VAN.get("104") ?? null, [], [], VAN, known), []);
  assert.deepEqual(said("105"), []);
  assert.deepEqual(said("777"), []);
});

test("a line is changed by its beer and size, and taken out with none", () => {
  const [line] = ASKED as [DropAsked];
  assert.deepEqual(withAsked(ASKED, { ...line, count: 5 }), [{ ...line, count: 5 }]);
  assert.equal(withAsked(ASKED, { ...line, kind: "pin" }).length, 2);
  assert.deepEqual(withAsked(ASKED, { ...line, count: 0 }), []);
  assert.equal(askedFault("", "firkin", "2"), "Choose a beer and a size.");
  for (const wrong of ["", "two", "0", "1.5", "100"]) {
    assert.equal(askedFault("b1", "firkin", wrong), "How many? A whole figure.");
  }
  assert.equal(askedFault("b1", "firkin", "12"), null);
});
