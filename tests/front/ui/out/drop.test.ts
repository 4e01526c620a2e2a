// Handing over: what is recorded of deposits, and what the note says of them.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Brewery, Customer, DropLine } from "../../../../static/src/domain/records.ts";
import { depositPence } from "../../../../static/src/ui/out/deposits.ts";
import type { AtTheDoor } from "../../../../static/src/ui/out/drop/at-the-door.ts";
import { handOverDrafts } from "../../../../static/src/ui/out/drop/hand-over.ts";
import { noteOf } from "../../../../static/src/ui/out/drop/note.ts";
import { ago, container, FIRKIN, KEG, NOW } from "../brewery.ts";

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
  counted: "",
  takenBy: "",
  signature: "",
  note: "",
};

const handed = (who: Customer, counted: string) => {
  const stop = { id: "d1", customer: "c1", numbers: ["101", "K1"], fields: {} };
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
    now: NOW,
  });
  const drop = drafts.find(({ kind }) => kind === "drop");
  assert.ok(drop);
  return drop.facts;
};

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
