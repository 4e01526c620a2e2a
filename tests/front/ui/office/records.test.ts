// Forms: what was typed becomes facts in the ledger's units, or a fault in words beside its field.

import assert from "node:assert/strict";
import { test } from "node:test";
import { recordSays, recordTone } from "../../../../static/src/ui/office/records/listing.ts";
import {
  asNew,
  asTyped,
  readForm,
  type Typed,
} from "../../../../static/src/ui/office/records/reading.ts";
import { SPECS } from "../../../../static/src/ui/office/records/specs.ts";
import type { Doc } from "../../../../static/src/ui/words/known.ts";
import { known } from "../brewery.ts";

const doc = (fields: Doc["fields"]): Doc => ({ fields, set_by: {} });
const beer = (typed: Typed, before: Doc | null = null, others: Doc[] = []) =>
  readForm(SPECS.beer, typed, before, others);

test("a new beer has what was typed, in whole units, and nothing that was not", () => {
  assert.deepEqual(beer({ name: " Oystercatcher ", abv_tenths: "4,2", conditioning_days: "7" }), {
    facts: { name: "Oystercatcher", abv_tenths: 42, conditioning_days: 7 },
    faults: {},
  });
});

test("tenths are rounded halves up", () => {
  assert.equal(beer({ name: "x", abv_tenths: "4.25" }).facts.abv_tenths, 43);
});

test("a change holds only what has changed", () => {
  const before = doc({ name: "Oystercatcher", abv_tenths: 42, style: "bitter" });
  const typed = { ...asTyped(SPECS.beer, before), abv_tenths: "4.3" };
  assert.deepEqual(beer(typed, before).facts, { abv_tenths: 43 });
  assert.deepEqual(beer(asTyped(SPECS.beer, before), before).facts, {});
});

test("all faults are told at once, each beside its field", () => {
  const { faults } = beer({ name: "", abv_tenths: "strong", conditioning_days: "1.5" });
  assert.deepEqual(Object.keys(faults), ["name", "abv_tenths", "conditioning_days"]);
  assert.equal(faults["name"], "This is needed.");
});

test("a name that another has is a fault, whatever its capitals", () => {
  const others = [doc({ name: "Marram Stout" })];
  assert.match(beer({ name: "marram stout" }, null, others).faults["name"] ?? "", /already/);
});

test("a gyle's litres are millilitres in the ledger and litres on the screen", () => {
  const { facts } = readForm(
    SPECS.gyle,
    { number: "318", beer: "b1", volume_ml: "818.5" },
    null,
    [],
  );
  assert.equal(facts.volume_ml, 818_500);
  assert.equal(asTyped(SPECS.gyle, doc({ volume_ml: 818_500 }))["volume_ml"], "818.5");
});

test("a new gyle is of the one beer in use; of several one has to be chosen", () => {
  const beers = (...docs: [string, Doc][]) => {
    const typed = asNew(SPECS.gyle, (kind) => new Map(kind === "beer" ? docs : []));
    return typed["beer"];
  };
  const one: [string, Doc] = ["b1", doc({ name: "Oystercatcher" })];
  const other: [string, Doc] = ["b2", doc({ name: "Marram Stout" })];
  const retired: [string, Doc] = ["b3", doc({ name: "Old Groyne", retired: true })];
  assert.equal(beers(one), "b1");
  assert.equal(beers(retired, one), "b1");
  assert.equal(beers(one, other), "");
  assert.equal(beers(), "");
});

test("a gyle needs its beer, a place what it is for", () => {
  assert.equal(readForm(SPECS.gyle, { number: "318" }, null, []).faults["beer"], "Choose one.");
  assert.equal(readForm(SPECS.place, { name: "Yard" }, null, []).faults["role"], "Choose one.");
});

test("a customer's Monday is day nought, and words are no telephone number", () => {
  const read = readForm(
    SPECS.customer,
    { name: "Lantern", delivery_day: "0", phone: "ask Ted" },
    null,
    [],
  );
  assert.equal(read.facts.delivery_day, 0);
  assert.match(read.faults["phone"] ?? "", /digits/);
});

test("words and figures can be emptied again", () => {
  const before = doc({ name: "Oystercatcher", style: "bitter", on_sale_days: 3 });
  const typed = { ...asTyped(SPECS.beer, before), style: "", on_sale_days: "" };
  const { facts, faults } = beer(typed, before);
  assert.deepEqual([facts, faults], [{ style: "", on_sale_days: null }, {}]);
});

test("what the bench needs of a beer is kept in the ledger's whole units", () => {
  const typed = {
    name: "Oystercatcher",
    target_co2_centivols: "1.45",
    priming_sugar: "sucrose",
    limit_gravity_e4: "1.0085",
    isinglass_ml_per_hl: "1040",
    vegan: "no",
    cereals: "barley wheat",
  };
  const { facts, faults } = beer(typed);
  assert.deepEqual(faults, {});
  assert.deepEqual(facts, {
    name: "Oystercatcher",
    target_co2_centivols: 145,
    priming_sugar: "sucrose",
    limit_gravity_e4: 10_085,
    isinglass_ml_per_hl: 1040,
    vegan: false,
    cereals: ["barley", "wheat"],
  });
  assert.deepEqual(beer(asTyped(SPECS.beer, doc(facts)), doc(facts)).facts, {});
});

test("a sugar bought as syrup, a syrup by its gravity, and kegs that are carbonated", () => {
  const typed = {
    name: "Oystercatcher",
    priming_sugar: "glucose_syrup",
    sugar_solids_tenths: "80",
    sugar_fermentable_tenths: "72,5",
    syrup_gravity_e4: "1.15",
    keg_co2_centivols: "2.2",
  };
  const { facts, faults } = beer(typed);
  assert.deepEqual(faults, {});
  assert.deepEqual(facts, {
    name: "Oystercatcher",
    priming_sugar: "glucose_syrup",
    sugar_solids_tenths: 800,
    sugar_fermentable_tenths: 725,
    syrup_gravity_e4: 11_500,
    keg_co2_centivols: 220,
  });
});

test("what the rules would refuse of a syrup or a keg is told at the form", () => {
  const { faults } = beer({
    name: "Oystercatcher",
    syrup_gravity_e4: "1.01",
    syrup_g_per_l: "1300",
    keg_co2_centivols: "3.5",
    sugar_solids_tenths: "101",
  });
  assert.deepEqual(faults, {
    sugar_solids_tenths: "From 1 to 100.",
    syrup_g_per_l: "From 20 to 1200 g/L.",
    syrup_gravity_e4: "From 1.02 to 1.179.",
    keg_co2_centivols: "From 2 to 3.",
  });
});

test("cereals can be unticked, and a rate out of range is told with its unit", () => {
  const before = doc({ name: "Oystercatcher", cereals: ["wheat"] });
  const typed = { ...asTyped(SPECS.beer, before), cereals: "", isinglass_ml_per_hl: "9000" };
  const { facts, faults } = beer(typed, before);
  assert.deepEqual(facts, { cereals: [] });
  assert.equal(faults["isinglass_ml_per_hl"], "From 0 to 5000 mL/hL.");
});

test("a gravity is typed in full or as brewers say it, and stands in the form in full", () => {
  const gyle = (present_gravity_e4: string) =>
    readForm(SPECS.gyle, { number: "1", beer: "b", present_gravity_e4 }, null, []);
  const kept = (text: string) => gyle(text).facts["present_gravity_e4"];
  assert.equal(kept("1.011"), 10_110);
  assert.equal(kept("1011"), 10_110);
  assert.equal(kept("1010,5"), 10_105);
  assert.equal(kept("998"), 9980);
  assert.equal(kept("1.0105"), 10_105);
  for (const wrong of ["11", "0.8", "1400", "10110"]) {
    assert.equal(gyle(wrong).faults["present_gravity_e4"], "From 0.9 to 1.3.", wrong);
  }
  const typed = (e4: number) => asTyped(SPECS.gyle, doc({ original_gravity_e4: e4 }));
  assert.equal(typed(10_700)["original_gravity_e4"], "1.070");
  assert.equal(typed(10_105)["original_gravity_e4"], "1.0105");
});

test("a day needs all of its year: one of two digits would be refused at the brewery", () => {
  const brewed = (brewed_on: string) =>
    readForm(SPECS.gyle, { number: "1", beer: "b", brewed_on }, null, []).faults["brewed_on"];
  assert.equal(brewed("2026-11-25"), undefined);
  assert.match(brewed("0026-11-25") ?? "", /all of its year/);
});

test("a place on the map is pasted as a map gives it, and kept in millionths of a degree", () => {
  const read = (map: string) => readForm(SPECS.customer, { name: "Lantern", map }, null, []);
  const place = { latitude_e6: 54123457, longitude_e6: -2567800 };
  for (const pasted of ["54.1234567, -2.5678", "54.1234567 -2.5678", " 54.1234567;-2.5678 "]) {
    assert.deepEqual(read(pasted).facts["map"], place);
  }
  assert.equal(asTyped(SPECS.customer, doc({ map: place }))["map"], "54.123457, -2.5678");
  for (const wrong of ["54.1234567", "up the hill", "91, 0", "0, 181", "54,1234 -2,5678,1"]) {
    assert.match(read(wrong).faults["map"] ?? "", /Latitude and longitude/);
  }
});

test("deposits are typed for each kind in pounds and kept in pence", () => {
  const read = (deposits: string) =>
    readForm(SPECS.customer, { name: "Lantern", deposits }, null, []);
  assert.deepEqual(read("keg_50=30\nfirkin= 12.5 ").facts["deposits"], {
    firkin: 1250,
    keg_50: 3000,
  });
  assert.equal(read("firkin=a lot").faults["deposits"], "A figure, such as 4.2.");
  assert.equal(read("firkin=1001").faults["deposits"], "From 0 to 1000.");
  const before = doc({ name: "Lantern", deposits: { firkin: 1250 } });
  const typed = asTyped(SPECS.customer, before);
  assert.equal(typed["deposits"], "firkin=12.5");
  assert.deepEqual(readForm(SPECS.customer, typed, before, []).facts, {});
  assert.deepEqual(readForm(SPECS.customer, { ...typed, deposits: "" }, before, []).facts, {
    deposits: null,
  });
});

test("a lot needs what it is and its mark, and may have stood in the frost", () => {
  const typed = {
    what: "isinglass",
    name: "IF2041",
    received_on: "2026-11-03",
    stored_temp_decidegc: "-1.5",
    so2_mg_per_l: "420",
  };
  const { facts, faults } = readForm(SPECS.lot, typed, null, []);
  assert.deepEqual(faults, {});
  assert.deepEqual(facts, { ...typed, stored_temp_decidegc: -15, so2_mg_per_l: 420 });
  assert.equal(asTyped(SPECS.lot, doc(facts))["stored_temp_decidegc"], "-1.5");
  const read = readForm(SPECS.lot, { stored_temp_decidegc: "-40" }, null, []);
  assert.deepEqual(read.faults, {
    what: "Choose one.",
    name: "This is needed.",
    stored_temp_decidegc: "From -30 to 100.",
  });
});

test("a lot is listed with what its life rests on, and one past it stands out", () => {
  const lot = doc({ what: "isinglass", received_on: "2026-05-01", stored_temp_decidegc: 40 });
  assert.equal(
    recordSays("lot", lot, known, {}).replaceAll("\u00a0", " "),
    "Isinglass, received 1 May and kept at 4 °C at the warmest, past its life since 30 Oct",
  );
  assert.equal(recordTone("lot", lot, known, {}), "look");
  const empty = doc({ ...lot.fields, retired: true });
  assert.equal(recordTone("lot", empty, known, {}), undefined);
  assert.doesNotMatch(recordSays("lot", empty, known, {}), /life/);
});
