// Who uses this phone: what the brewery said last, kept for when there is no network.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  accountOf,
  type Me,
  personOf,
  roleOf,
  setDoor,
  takeMe,
} from "../../../static/src/store/account.ts";
import { ME } from "./a-me.ts";
import { aDevice, anOpenPage, FIRKIN } from "./a-phone.ts";

const downAs = (name: string, role: Me["person"]["role"]): Me => ({
  ...ME,
  people: ME.people.map((person) => (person.name === name ? { ...person, role } : person)),
});

test("what the brewery said is there after a restart, and in other tabs at once", async () => {
  const device = aDevice();
  const [page, other] = [await anOpenPage(device), await anOpenPage(device)];
  takeMe(page.phone, ME);
  await page.phone.connection.read(["meta"], async () => undefined); // after the write before it
  const again = await anOpenPage(device);
  assert.deepEqual(accountOf(again.phone).value, { door: "in", me: ME });
  assert.equal(personOf(again.phone).value, "Ann");
  assert.deepEqual(accountOf(other.phone).value.me, ME);
});

test("who has the phone in hand stays when news comes, and gives way to who signs in", async () => {
  const { phone } = await anOpenPage(aDevice());
  takeMe(phone, ME);
  personOf(phone).value = "Bob";
  takeMe(phone, ME);
  assert.equal(personOf(phone).value, "Bob");
  takeMe(phone, { ...ME, person: { name: "Dee", role: "driver" } }, { arriving: true });
  assert.equal(personOf(phone).value, "Dee");
  takeMe(phone, { ...ME, people: ME.people.filter(({ name }) => name !== "Dee") });
  assert.equal(personOf(phone).value, "Ann", "one who is no longer there has it no longer");
});

test("a change of role is told once, of who has the phone in hand", async () => {
  const { phone } = await anOpenPage(aDevice());
  assert.equal(takeMe(phone, ME), null);
  personOf(phone).value = "Bob";
  assert.equal(takeMe(phone, downAs("Dee", "cellar")), null);
  assert.deepEqual(takeMe(phone, downAs("Bob", "reader")), {
    person: "Bob",
    before: "cellar",
    role: "reader",
  });
  assert.equal(takeMe(phone, downAs("Bob", "reader")), null);
});

test("signed out or revoked, the phone still knows its people and records on", async () => {
  const { phone, book } = await anOpenPage(aDevice());
  takeMe(phone, ME);
  for (const door of ["not-paired", "revoked"] as const) {
    setDoor(phone, door);
    assert.deepEqual(accountOf(phone).value, { door, me: ME });
    const { entry } = await book.record("registered", "117", FIRKIN);
    assert.equal(entry.person, "Ann");
  }
  assert.equal(book.waiting.value.count, 2);
});

test("what a role may not do is not recorded, and says who may", async () => {
  const { phone, book } = await anOpenPage(aDevice());
  takeMe(phone, ME);
  personOf(phone).value = "Dee";
  await assert.rejects(
    book.record("registered", "117", FIRKIN),
    /^NotPossible: Dee is down as driver\. This is for Ann and Bob\.$/,
  );
  await book.record("returned", "117", { ullage_ml: 0 });
  personOf(phone).value = "Eve";
  await assert.rejects(book.record("noted", "117", { words: "x" }), /This is for Ann, Bob and Dee/);
  await assert.rejects(
    book.recordMany([{ kind: "returned", subject: "117", facts: {} }]),
    /Eve is down to look/,
  );
  assert.equal(book.waiting.value.count, 1);
});

test("a driver undoes what they recorded themselves, and nothing of anybody else", async () => {
  const { phone, book } = await anOpenPage(aDevice());
  takeMe(phone, ME);
  personOf(phone).value = "Ann";
  const hers = await book.record("returned", "117", { ullage_ml: 0 });
  personOf(phone).value = "Dee";
  const own = await book.record("returned", "118", { ullage_ml: 0 });
  await assert.rejects(
    book.undo(hers.entry.id),
    /^NotPossible: Dee is down as driver\. This is for Ann and Bob\.$/,
  );
  await assert.rejects(book.moveTo(hers.entry.id, "119"), /This is for Ann and Bob/);
  const told = { ...hers.entry, id: "told", person: "Bob" };
  await assert.rejects(book.undo("told", told), /This is for Ann and Bob/);
  await book.undo("told", { ...told, person: "Dee" });
  await book.undo(own.entry.id);
  personOf(phone).value = "Bob";
  await book.undo(hers.entry.id);
  assert.equal(book.waiting.value.count, 5);
});

test("where the phone knows nobody who may, it says of what sort they are", async () => {
  const { phone, book } = await anOpenPage(aDevice());
  const dee = ME.people.filter(({ name }) => name === "Dee");
  takeMe(phone, { ...ME, person: { name: "Dee", role: "driver" }, people: dee });
  assert.equal(
    book.whyNot("filled"),
    "Dee is down as driver. This is for an owner or somebody of the cellar.",
  );
  assert.equal(book.whyNot("returned"), null);
});

test("a phone that knows nobody lets everybody record: the brewery judges later", async () => {
  const { phone, book } = await anOpenPage(aDevice());
  assert.equal(roleOf(accountOf(phone).value, "Ann"), null);
  personOf(phone).value = "Ann";
  await book.record("registered", "117", FIRKIN);
  assert.equal(book.whyNot("filled"), null);
});
