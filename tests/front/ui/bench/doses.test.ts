// Doses for a container: from the recipe and the gyle's readings; what lacks is named, never nought.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  type DoseLine,
  doseLines,
  loudCautions,
  type Racked,
} from "../../../../static/src/ui/bench/doses.ts";
import { syrupWords } from "../../../../static/src/ui/bench/syrup-words.ts";

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
  assert.equal(twelve?.total, 12 * (one?.total ?? 0));
});

const MIXED = [
  { kind: "firkin", volume_ml: 40_915, count: 3, limit_millibar: null },
  { kind: "pin", volume_ml: 20_457, count: 2, limit_millibar: null },
  { kind: "other_cask", volume_ml: 10_229, count: 1, limit_millibar: null },
];

test("what to draw is the sum of what each is given, as it is shown", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const beer = { isinglass_ml_per_hl: 1700, hops_g_per_hl: 17 };
  for (const recipe of [BEER, dry]) {
    const all = lines({ ...recipe, ...beer }, GYLE, MIXED);
    assert.equal(all.length, 4);
    for (const { what, each, total, sizes } of all) {
      const given = sizes.reduce((sum, { count }, n) => sum + count * (each?.[n] ?? 0), 0);
      assert.equal(total, given, what);
    }
    assert.deepEqual(named(all, "isinglass")?.each, [696, 348, 174]);
    assert.equal(named(all, "isinglass")?.total, 2958);
  }
});

test("where whole grams come to another sum than the working, it says so", () => {
  const hops = named(lines({ ...BEER, hops_g_per_hl: 17 }, GYLE, MIXED), "hops");
  const says = `Weighed in whole grams, ${hops?.total} g in all.`;
  assert.deepEqual(hops?.remarks, [{ says, look: false }]);
  const even = lines({ ...BEER, hops_g_per_hl: 100 }, GYLE, [
    { kind: "keg_20", volume_ml: 20_000, count: 2, limit_millibar: null },
  ]);
  assert.deepEqual(named(even, "hops")?.remarks, []);
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

const lotOf = (name: string, so2_mg_per_l?: number) => ({
  fields: { name, ...(so2_mg_per_l === undefined ? {} : { so2_mg_per_l }) },
  set_by: {},
});
const LOTS = new Map([
  ["f12", lotOf("F12", 300)],
  ["f13", lotOf("F13")],
  ["s4", lotOf("S4", 100)],
]);
/** Carried in by the isinglass alone, and whose figure it goes by. */
const carriedBy = (more: Partial<Racked>) => {
  const beer = { ...BEER, auxiliary: "none" as const };
  const all = doseLines({ beer, gyle: GYLE, sizes: FIRKIN, settings: {}, ...more });
  const [isinglass] = all.filter(({ what }) => what === "isinglass");
  const steps = isinglass?.worked.flatMap((one) => one.steps) ?? [];
  const carried = steps.find(({ says }) => says.startsWith("Carried in"))?.value;
  return { carried, remarks: isinglass?.remarks?.map(({ says }) => says) };
};

test("sulphite goes by the lot that goes in, else by the highest published, and says which", () => {
  // 10.42 mL/L of 500 mg/L (Murphy & Son, Function of Isinglass Finings), and of 300 mg/L
  assert.deepEqual(carriedBy({}), {
    carried: 5.21,
    remarks: ["Sulphite in the isinglass: 500 mg/L, the highest published, as no lot is noted."],
  });
  assert.deepEqual(carriedBy({ next: { isinglass: "f12" }, lots: LOTS }), {
    carried: 3.13,
    remarks: ["Sulphite in the isinglass: 300 mg/L, by lot F12."],
  });
  assert.deepEqual(carriedBy({ next: { isinglass: "f13" }, lots: LOTS }), {
    carried: 5.21,
    remarks: [
      "Sulphite in the isinglass: 500 mg/L, the highest published, as none is entered for lot F13.",
    ],
  });
});

test("fined later, what went in counts by its own lot and what goes in now by the one in use", () => {
  const lot = "s4";
  const silica = { what: "auxiliary_silica" as const, amount_ml: 71, amount_g: null, lot };
  const isinglass = { ...silica, what: "isinglass" as const, amount_ml: 400, lot: null };
  const mark = {
    since: "2026-11-20T08:00:00.000Z",
    entry: "e2",
    by: "Ann",
    inferred: false,
    moves: 0,
  };
  const wentIn = {
    volume_ml: 40_000,
    doses: [
      { ...silica, ...mark },
      { ...isinglass, ...mark },
    ],
  };
  // 71 / 40 x 0.1 + 400 / 40 x 0.5 went in; 10.42 x 0.3 goes in now
  assert.deepEqual(carriedBy({ wentIn, lots: LOTS, next: { isinglass: "f12" } }), {
    carried: 8.3,
    remarks: [
      "Sulphite in the auxiliary finings (silica): 100 mg/L, by lot S4.",
      "Sulphite in the isinglass: 500 mg/L, the highest published, as no lot is noted.",
      "Sulphite in the isinglass: 300 mg/L, by lot F12.",
    ],
  });
});

test("a sugar bought as syrup asks for what its own sheet says", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const invert = { ...dry, priming_sugar: "invert_syrup" };
  assert.deepEqual(named(lines(invert), "primings")?.missing, { words: ["solids"], of: "beer" });
  const glucose = { ...dry, priming_sugar: "glucose_syrup", sugar_solids_tenths: 800 };
  assert.deepEqual(named(lines(glucose), "primings")?.missing?.words, ["fermentable part"]);
});

test("invert syrup of 75 % solids is a third more than dry invert, which is 1.05 of sucrose", () => {
  // Reference, 2.1: 4.046 g/L of dry invert and 3.844 g/L of sucrose for one volume
  const { syrup_g_per_l: _, ...dry } = BEER;
  const sucrose = named(lines(dry), "primings")?.each?.[0] ?? 0;
  const invert = named(
    lines({ ...dry, priming_sugar: "invert_syrup", sugar_solids_tenths: 750 }),
    "primings",
  );
  assert.equal(invert?.note, "as bought, in full");
  const expected = (sucrose * 4.046) / 3.844 / 0.75;
  assert.ok(Math.abs((invert?.each?.[0] ?? 0) - expected) < 1.5, `${invert?.each} ${expected}`);
});

test("half the solids of a glucose syrup ferment: twice as much of it", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const of = (sugar_fermentable_tenths: number) =>
    named(
      lines({
        ...dry,
        priming_sugar: "glucose_syrup",
        sugar_solids_tenths: 800,
        sugar_fermentable_tenths,
      }),
      "primings",
    )?.each?.[0] ?? 0;
  assert.ok(Math.abs(of(500) - 2 * of(1000)) <= 1.5);
});

test("malt extract is an estimate by Balling, whatever was chosen", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const malt = named(lines({ ...dry, priming_sugar: "malt_extract" }), "primings");
  assert.equal(malt?.note, "dry, by Balling, an estimate");
});

test("Balling asks for more sugar, and the choice stands with the dose", () => {
  const full = named(lines(BEER), "primings");
  const balling = named(lines({ ...BEER, priming_yield: "balling" }), "primings");
  assert.ok((balling?.each?.[0] ?? 0) > (full?.each?.[0] ?? 0));
  assert.equal(balling?.note, "syrup 800 g/L, by Balling");
});

test("a syrup is as strong as its gravity says: 1.150 is 393 g in a litre", () => {
  const { syrup_g_per_l: _, ...dry } = BEER;
  const byGravity = named(lines({ ...dry, syrup_gravity_e4: 11_500 }), "primings");
  const byWeight = named(lines({ ...dry, syrup_g_per_l: 393 }), "primings");
  assert.equal(byGravity?.unit, "mL");
  assert.equal(byGravity?.note, "syrup 1.150, in full");
  assert.ok(Math.abs((byGravity?.each?.[0] ?? 0) - (byWeight?.each?.[0] ?? 0)) <= 1);
});

test("the batch is made up whole, and what is left of it is told", () => {
  const [primings] = lines(
    BEER,
    GYLE,
    FIRKIN.map((size) => ({ ...size, count: 12 })),
  );
  assert.ok(primings);
  const words = syrupWords(primings, BEER);
  const [, grams, made, left] =
    /^Dissolve (\d+) g of sucrose and make up to (\d+) mL with boiled liquor; (\d+) mL are left over\.$/.exec(
      words,
    ) ?? [];
  assert.equal(Number(made) % 500, 0);
  assert.equal(Number(grams), (Number(made) * 800) / 1000);
  assert.equal(Number(made) - Number(left), primings.total);
});

test("a run of sizes has a dose for each, in one order with them", () => {
  const pin = { kind: "pin", volume_ml: 20_457, count: 2, limit_millibar: null };
  for (const line of lines(BEER, GYLE, [...FIRKIN, pin])) {
    assert.equal(line.each?.length, 2);
    const [firkin = 0, half = 0] = line.each ?? [];
    assert.ok(Math.abs(firkin / 2 - half) <= 1, line.what);
  }
});
