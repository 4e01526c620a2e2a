// Containers of other breweries: taken in, and sent home.

import assert from "node:assert/strict";
import { test } from "node:test";
import wordings from "../../../../cellarapp/domain/wordings.json" with { type: "json" };
import type { Customer } from "../../../../static/src/domain/records.ts";
import { filledIn } from "../../../../static/src/ui/out/call-text.ts";
import { hiredDue, hiredWords } from "../../../../static/src/ui/out/hired.ts";
import { holdings } from "../../../../static/src/ui/out/holdings.ts";
import { byOwner, namesFor } from "../../../../static/src/ui/out/stray-text.ts";
import { homeDrafts, strays, strayWords } from "../../../../static/src/ui/out/strays.ts";
import { ago, container, FIRKIN, filled, NOW, type Told } from "../brewery.ts";

const THEIRS: Told = [ago(40), "registered", { kind: "firkin", capacity_ml: 40915, owner: "Wold" }];
const back = (days: number): Told => [ago(days), "returned", {}];
const named = (name: string): Customer => ({ fields: { name }, set_by: {}, chase: null });

test("what is another's waits to go home, the longest here first", () => {
  const found = strays(
    [
      container("1", THEIRS, back(3)),
      container("2", THEIRS, back(12)),
      container("3", FIRKIN, back(20)),
      container("4", THEIRS, filled(2, null)), // hired, and in use
      container("5", THEIRS, back(0)),
    ],
    NOW,
  );
  assert.deepEqual(found.map(strayWords), [
    "Of Wold, here 12 days.",
    "Of Wold, here 3 days.",
    "Of Wold, since today.",
  ]);
});

test("it goes home to its owner, who is entered where nobody has", () => {
  const [stray] = strays([container("1", THEIRS, back(3))], NOW);
  assert.ok(stray);
  const sent = (customer: string) => ({
    kind: "sent",
    subject: "1",
    facts: { customer, due_on: null },
  });
  assert.deepEqual(
    homeDrafts(stray, new Map([["c7", named("wold ")]]), () => "new"),
    [sent("c7")],
  );
  assert.deepEqual(
    homeDrafts(stray, new Map(), () => "new"),
    [{ kind: "customer", subject: "new", facts: { name: "Wold" } }, sent("new")],
  );
});

test("at home it is nobody's to chase, at a pub it is", () => {
  const at = (customer: string) =>
    container("1", THEIRS, back(30), [ago(20), "sent", { customer, due_on: null }]);
  const customers = new Map([
    ["c7", named("Wold")],
    ["c1", named("Lantern")],
  ]);
  assert.deepEqual(holdings([at("c7")], customers, NOW), []);
  assert.equal(holdings([at("c1")], customers, NOW).length, 1);
});

test("a hired one warns before it is due, wherever it is", () => {
  const hired = (number: string, due_on: string): ReturnType<typeof container> =>
    container(number, [
      ago(40),
      "registered",
      { kind: "keg_30", capacity_ml: 30000, owner: "Wold", hire: { pence_a_day: 15, due_on } },
    ]);
  const found = hiredDue(
    [
      hired("1", "2026-12-09"),
      hired("2", "2026-12-10"),
      hired("3", "2026-11-15"),
      container("4", FIRKIN),
    ],
    NOW,
    14,
    () => false,
  );
  assert.deepEqual(
    found.map((one) => hiredWords(one, "At Lantern", NOW)),
    [
      "Of Wold, due back 10 days ago, £0.15 a day, £2 since then. At Lantern.",
      "Of Wold, due back 9 Dec, £0.15 a day. At Lantern.",
    ],
  );
  assert.deepEqual(
    hiredDue([hired("1", "2026-12-09")], NOW, 14, () => true),
    [],
  );
});

test("an owner is written to about all of theirs at once, with no name left in braces", () => {
  const WOLD: Told = [ago(40), "registered", { kind: "pin", capacity_ml: 20457, owner: "wold" }];
  const BECK: Told = [ago(40), "registered", { kind: "pin", capacity_ml: 20457, owner: "Beck" }];
  const all = [container("1", THEIRS, back(3)), container("2", WOLD, back(12))];
  const owners = byOwner(strays([...all, container("3", BECK, back(5))], NOW));
  assert.deepEqual(
    owners.map(({ strays: theirs }) => theirs.map(({ standing }) => standing.number)),
    [["2", "1"], ["3"]],
  );
  const [first] = owners;
  assert.ok(first);
  const names = namesFor(first, { person: "Ann", brewery: "", address: "2 Ropewalk" });
  assert.equal(
    filledIn(wordings.stray_text.words, names),
    "Hello wold, 1 pin and 1 firkin of yours came back to us with ours. By number: 2, 1. The first has been here for 12 days. When will you collect them, or where may we leave them? Thank you, Ann",
  );
  assert.deepEqual(Object.keys(names).sort(), [...wordings.stray_text.holds].sort());
});
