// Entering a run of containers.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  readRegistration,
  registrationWords,
} from "../../../../static/src/ui/office/register/registering.ts";
import { container, FIRKIN } from "../brewery.ts";

const typed = {
  numbers: "",
  kind: "firkin",
  litres: "",
  tare: "",
  limit: "",
  owner: "",
  hirePounds: "",
  hireDueOn: "",
  place: "",
};
const there = new Map([["118", container("118", FIRKIN)]]);

test("a run is entered with the usual size of its kind, without those on record", () => {
  assert.deepEqual(readRegistration({ ...typed, numbers: "117-119" }, there), {
    numbers: ["117", "119"],
    known: ["118"],
    facts: { kind: "firkin", capacity_ml: 40915 },
    faults: {},
  });
});

test("another size, weight, owner and place are taken along", () => {
  const { facts } = readRegistration(
    {
      ...typed,
      numbers: "K1",
      kind: "other_keg",
      litres: "58,7",
      tare: "13.2",
      limit: "3,5",
      owner: " Hire ",
      place: "p",
    },
    there,
  );
  assert.deepEqual(facts, {
    kind: "other_keg",
    capacity_ml: 58_700,
    tare_g: 13_200,
    limit_millibar: 3500,
    owner: "Hire",
    place: "p",
  });
});

test("faults are told beside their fields", () => {
  const faults = (change: object) => readRegistration({ ...typed, ...change }, there).faults;
  assert.match(faults({}).numbers ?? "", /Type the numbers/);
  assert.match(faults({ numbers: "118" }).numbers ?? "", /on record already/);
  assert.match(faults({ numbers: "117, cask" }).numbers ?? "", /cask/);
  assert.match(faults({ numbers: "1", kind: "other_cask" }).litres ?? "", /How many litres/);
  const hired = { numbers: "1", owner: "Wold", hirePounds: "0,15", hireDueOn: "2026-12-31" };
  assert.deepEqual(readRegistration({ ...typed, ...hired }, there).facts.hire, {
    pence_a_day: 15,
    due_on: "2026-12-31",
  });
  for (const half of [{ owner: "" }, { hirePounds: "" }, { hireDueOn: "" }]) {
    assert.match(faults({ ...hired, ...half }).hire ?? "", /Pounds a day/);
  }
  assert.match(faults({ numbers: "1", tare: "x" }).tare ?? "", /Kilograms/);
  const keg = { numbers: "K1", kind: "keg_50" };
  for (const limit of ["0", "10.1", "3 bar"]) {
    assert.equal(faults({ ...keg, limit }).limit, "Bar from 0.1 to 10, as 3.5.");
  }
});

test("the marked pressure is of kegs alone, and may stay empty", () => {
  const facts = (change: object) => readRegistration({ ...typed, ...change }, there).facts;
  assert.equal(facts({ numbers: "K1", kind: "keg_30", limit: "3" }).limit_millibar, 3000);
  assert.equal("limit_millibar" in facts({ numbers: "K1", kind: "keg_30", limit: " " }), false);
  assert.equal("limit_millibar" in facts({ numbers: "1", limit: "3" }), false);
});

test("the button promises what it will enter", () => {
  assert.equal(registrationWords("Firkin", ["117"]), "1 firkin: 117");
  assert.equal(registrationWords("30 L keg", ["K1", "K2"]), "2 × 30 L keg: K1 and K2");
});
