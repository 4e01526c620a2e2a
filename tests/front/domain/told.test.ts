// What the rules of readiness are told of a container.

import assert from "node:assert/strict";
import { test } from "node:test";
import { ready } from "../../../static/src/domain/cellar/ready.ts";
import { type Around, caskInputs, isFined } from "../../../static/src/domain/cellar/told.ts";
import type { Beer, Gyle, Place } from "../../../static/src/domain/records.ts";
import { ago, container, FIRKIN, filled, KEG, NOW, type Told } from "../ui/brewery.ts";

const beer = (fields: object) => ({ fields, set_by: {} }) as unknown as Beer;
const gyle = (fields: object) => ({ fields, set_by: {}, drawn_ml: 0 }) as unknown as Gyle;
const place = (fields: object, temperatures: [string, number][] = []) =>
  ({ fields, set_by: {}, temperatures }) as unknown as Place;
const NOTHING: Around = { beer: null, gyle: null, place: null };

const inputs = (around: Partial<Around>, ...told: Told[]) => {
  const found = caskInputs(container("104", FIRKIN, ...told), { ...NOTHING, ...around });
  assert.ok(found);
  return found;
};

const isinglass = (days: number, hours = 0): Told => [
  ago(days, hours),
  "dosed",
  { what: "isinglass", amount_ml: 300 },
];

test("an empty container is not asked about", () => {
  assert.equal(caskInputs(container("104", FIRKIN), NOTHING), null);
});

test("the beer's own days, and the day on the label", () => {
  const told = inputs(
    { beer: beer({ conditioning_days: 9, on_sale_days: 4 }) },
    filled(20, "2026-12-18"),
  );
  assert.deepEqual(
    [told.conditioning_days, told.on_sale_days, told.best_before_on, told.holds_ml],
    [9, 4, "2026-12-18", 40915],
  );
});

test("fined as noted; where nothing was noted as the beer usually is; else left to the rule", () => {
  const contents = (...told: Told[]) => container("104", FIRKIN, ...told).contents ?? assert.fail();
  const plain = contents(filled(20, null));
  assert.equal(isFined(contents(filled(20, null), isinglass(19)), null), true);
  assert.equal(isFined(plain, beer({ isinglass_ml_per_hl: 600 })), true);
  assert.equal(isFined(plain, beer({ isinglass_ml_per_hl: 0 })), false);
  assert.equal(isFined(plain, beer({ vegan: true })), false);
  assert.equal(isFined(plain, beer({})), null);
  const hopped: Told = [ago(19), "dosed", { what: "hops", amount_g: 50 }];
  assert.equal(isFined(contents(filled(20, null), hopped), beer({})), false);
});

test("moves count from the fining on", () => {
  const told = inputs({}, filled(20, null), [ago(19), "moved", { place: "cold" }], isinglass(18), [
    ago(17),
    "moved",
    { place: "brewery" },
  ]);
  assert.deepEqual([told.moves, told.last_moved_at, told.fined_at], [1, ago(17), ago(18)]);
});

test("vented when the first spile went in, hard since the hard one", () => {
  const told = inputs(
    {},
    filled(20, null),
    [ago(3), "stillaged", {}],
    [ago(2), "vented", { spile: "soft" }],
    [ago(1), "vented", { spile: "hard" }],
    [ago(0, 5), "tapped", {}],
    [ago(0, 4), "checked", { taste: "good" }],
  );
  assert.deepEqual(
    [told.stillaged_at, told.vented_at, told.hard_spile_at, told.tapped_at, told.tasted_at],
    [ago(3), ago(2), ago(1), ago(0, 5), ago(0, 4)],
  );
});

test("a soft spile is no hard one", () => {
  const told = inputs({}, filled(20, null), [ago(2), "vented", { spile: "soft" }]);
  assert.equal(told.hard_spile_at, null);
});

test("only readings from while it stood there, in degrees, with the place's own beside them", () => {
  const cold = place({ temp_decidegc: 118 }, [
    [ago(9), 150],
    [ago(2), 121],
    [ago(1), 990],
  ]);
  const told = inputs({ place: cold }, filled(20, null), [ago(4), "moved", { place: "cold" }]);
  assert.deepEqual(told.stays, [{ since_at: ago(4), place_temp_c: 11.8 }]);
  assert.deepEqual(told.readings, [{ at: ago(2), reading_temp_c: 12.1 }]);
});

test("a gyle's temperature is the beer's when it was filled", () => {
  assert.equal(
    inputs({ gyle: gyle({ fining_temp_decidegc: 145 }) }, filled(2, null)).fill_temp_c,
    14.5,
  );
  assert.equal(
    inputs({ gyle: gyle({ fining_temp_decidegc: 480 }) }, filled(2, null)).fill_temp_c,
    null,
  );
});

test("the rule takes what it is told, of a cask and of a keg", () => {
  const keg = caskInputs(container("K12", KEG, filled(3, null, "g318", 30_000)), NOTHING);
  assert.ok(keg);
  assert.equal(ready({ ...keg, now: NOW }).result.reasons.length, 6);
  const cask = inputs({}, filled(20, "2026-12-18"), [ago(1), "stillaged", {}]);
  assert.equal(ready({ ...cask, now: NOW }).result.is_ready, false);
});

test("a reading that tells nothing new is left out, and one every three hours stays", () => {
  const readings = Array.from({ length: 12 }, (_, n): [string, number] => [ago(1, -n / 2), 118]);
  const cold = place({}, [...readings, [ago(0, 17), 125]]);
  const told = inputs({ place: cold }, filled(20, null), [ago(4), "moved", { place: "cold" }]);
  assert.deepEqual(
    told.readings?.map(({ at }) => at),
    [ago(1), ago(0, 21), ago(0, 17)],
  );
});

test("what was read just before it came counts from when it came, what was read long before not", () => {
  const read = (hoursBefore: number) => {
    const cold = place({}, [[ago(4, hoursBefore), 180]]);
    return inputs({ place: cold }, filled(20, null), [ago(4), "moved", { place: "cold" }]).readings;
  };
  assert.deepEqual(read(1), [{ at: ago(4), reading_temp_c: 18 }]);
  assert.deepEqual(read(13), []);
});

test("tapped for a sale it is drawn from then on, unless a dip says otherwise", () => {
  const tapped: Told = [ago(1), "tapped", {}];
  const forSale = (hours: number): Told => [ago(2), "planned", { sale_at: ago(1, -hours) }];
  const drawn = (...told: Told[]) => inputs({}, filled(20, null), ...told).first_drawn_at;
  assert.equal(drawn(forSale(24), tapped), ago(0));
  assert.equal(drawn(tapped), null);
  assert.equal(drawn(forSale(24)), null);
  assert.equal(drawn(forSale(-1), tapped), null);
  assert.equal(drawn(forSale(49), tapped), null);
  assert.equal(drawn(forSale(24), tapped, [ago(0, 12), "dipped", { left_ml: 30_000 }]), null);
});
