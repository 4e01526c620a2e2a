// Doses for a container: from the recipe and the gyle's readings; what lacks is named, never nought.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  type DoseLine,
  doseLines,
  loudCautions,
  type Racked,
} from "../../../../static/src/ui/bench/doses.ts";

const BEER: Racked["beer"] = {
  target_co2_centivols: 150,
  priming_sugar: "sucrose",
  priming_yield: "full",
  syrup_g_per_l: 800,
  limit_gravity_e4: 10_090,
  auxiliary: "auxiliary_silica",
  auxiliary_ml_per_hl: 174,
  isinglass_ml_per_hl: 1042,
};
const GYLE: Racked["gyle"] = {
  present_gravity_e4: 10_100,
  highest_temp_decidegc: 200,
  fining_temp_decidegc: 130,
};
const FIRKIN = [{ kind: "firkin", volume_ml: 40_915, count: 1, limit_millibar: null }];

const lines = (
  beer: Racked["beer"],
  gyle: Racked["gyle"] = GYLE,
  sizes: Racked["sizes"] = FIRKIN,
) => doseLines({ beer, gyle, sizes, settings: {} });
const named = (all: DoseLine[], what: string) => all.find((line) => line.what === what);

test("a fined and primed beer has its doses in the order in which they go in", () => {
  const all = lines(BEER);
  assert.deepEqual(
    all.map((line) => [line.what, line.unit, line.each?.length]),
    [
      ["primings", "mL", 1],
      ["auxiliary_silica", "mL", 1],
      ["isinglass", "mL", 1],
    ],
  );
  assert.equal(named(all, "isinglass")?.each?.[0], 426);
  assert.equal(named(all, "auxiliary_silica")?.each?.[0], 71);
  assert.equal(named(all, "isinglass")?.note, "at 13 °C");
  assert.equal(named(all, "primings")?.note, "syrup 800 g/L, in full");
});

test("with no syrup the sugar is dry grams, and twelve take twelve times as much", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const [one] = lines(dry);
  const [twelve] = lines(
    dry,
    GYLE,
    FIRKIN.map((size) => ({ ...size, count: 12 })),
  );
  assert.equal(one?.unit, "g");
  assert.ok(Math.abs((twelve?.total ?? 0) - 12 * (one?.total ?? 0)) <= 6);
});

test("a gyle not measured is named, and the dose is not nought", () => {
  const primings = named(lines(BEER, {}), "primings");
  assert.equal(primings?.each, null);
  assert.deepEqual(primings?.missing, {
    words: ["gravity now", "warmest temperature"],
    of: "gyle",
  });
});

test("a beer without its limit or its rate is named as the beer's", () => {
  const { limit_gravity_e4: _, auxiliary_ml_per_hl: __, ...beer } = BEER;
  const all = lines(beer);
  assert.equal(named(all, "primings")?.missing?.of, "beer");
  assert.deepEqual(named(all, "auxiliary_silica")?.missing?.words, ["the rate of auxiliary"]);
});

test("a measured CO2 stands in for the temperature", () => {
  const gyle = { present_gravity_e4: 10_100, measured_co2_centivols: 95 };
  assert.notEqual(named(lines(BEER, gyle), "primings")?.each, null);
});

test("alginate and isinglass never go in together: isinglass comes later", () => {
  const all = lines({ ...BEER, auxiliary: "auxiliary_alginate" });
  assert.equal(named(all, "isinglass")?.later, true);
  assert.equal(named(all, "auxiliary_alginate")?.later, false);
});

test("a vegan beer gets no isinglass, and says why", () => {
  const isinglass = named(lines({ ...BEER, vegan: true }), "isinglass");
  assert.equal(isinglass?.each, null);
  assert.match(isinglass?.note ?? "", /vegan/);
});

test("beer with extract enough gets none and the reason", () => {
  const primings = named(lines(BEER, { ...GYLE, present_gravity_e4: 10_160 }), "primings");
  assert.deepEqual(primings?.each, [0]);
  assert.match(primings?.note ?? "", /enough extract/);
});

test("a temperature that cannot be is told, not worked with", () => {
  const primings = named(lines(BEER, { ...GYLE, highest_temp_decidegc: 450 }), "primings");
  assert.deepEqual(primings?.missing?.words, ["warmest temperature from 0 to 30 °C"]);
});

test("only what this racking has earned is said aloud", () => {
  assert.deepEqual(loudCautions(lines(BEER)), []);
  assert.ok(loudCautions(lines({ ...BEER, isinglass_ml_per_hl: 4000 })).length > 0);
});

const workedOf = (all: DoseLine[], what: string) => named(all, what)?.worked ?? [];
const cautionsOf = (all: DoseLine[], what: string) =>
  workedOf(all, what).flatMap(({ cautions }) => cautions);

test("of a beer that is given both, the working says that they never share a vessel", () => {
  const both = lines(BEER);
  assert.ok(cautionsOf(both, "isinglass").includes("two_vessels"));
  assert.ok(cautionsOf(both, "auxiliary_silica").includes("two_vessels"));
  assert.ok(
    !cautionsOf(lines({ ...BEER, auxiliary: "none" }), "isinglass").includes("two_vessels"),
  );
});

test("yeast, pH and temperature out of their windows are said aloud", () => {
  const measured = { ...GYLE, yeast_thousands_per_ml: 2500, ph_hundredths: 430 };
  const loud = loudCautions(lines(BEER, { ...measured, fining_temp_decidegc: 90 }));
  assert.deepEqual(loud, ["fining_at_risk", "ph_outside", "fining_cold"]);
});

test("sulphite that finings carry over the limit is said aloud, and else stands in the working", () => {
  assert.ok(cautionsOf(lines(BEER), "isinglass").includes("beer_sulphite_not_known"));
  assert.deepEqual(loudCautions(lines(BEER)), []);
  const over = loudCautions(lines(BEER, { ...GYLE, sulphite_decimg_per_l: 50 }));
  assert.deepEqual(over, ["declare_sulphites"]);
});
