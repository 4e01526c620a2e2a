// What a fill and a fining carry of doses: each container its own amount, and what was really given.

import assert from "node:assert/strict";
import { test } from "node:test";
import { loudCautions } from "../../../../static/src/ui/bench/doses.ts";
import type { Instead } from "../../../../static/src/ui/bench/instead.ts";
import { readAmount, withAmount } from "../../../../static/src/ui/bench/instead.ts";
import {
  fillDoses,
  finingFacts,
  finingLine,
  finingRefusal,
} from "../../../../static/src/ui/bench/noted.ts";
import { usualPh } from "../../../../static/src/ui/bench/usual-ph.ts";
import type { Known } from "../../../../static/src/ui/words/known.ts";
import { ago, container, FIRKIN, filled, known as plain } from "../brewery.ts";

const doc = (fields: object) => ({ fields, set_by: {}, drawn_ml: 0 });
const BEER = {
  name: "Oystercatcher",
  target_co2_centivols: 150,
  priming_sugar: "sucrose",
  syrup_g_per_l: 800,
  limit_gravity_e4: 10_090,
  isinglass_ml_per_hl: 1042,
};
const known = {
  ...plain,
  beers: new Map([["b1", doc(BEER)]]),
  gyles: new Map([
    ["g318", doc({ beer: "b1", present_gravity_e4: 10_090, highest_temp_decidegc: 200 })],
    ["g319", doc({ beer: "b1" })],
  ]),
} as unknown as Known;

const CASK = { kind: "firkin", volume_ml: 40_915, limit_millibar: null };
const PIN = { kind: "pin", volume_ml: 20_460, limit_millibar: null };

const given = (one: typeof CASK, instead: Instead = {}, gyle = "g318") =>
  fillDoses(known, gyle, one, {}, { instead, lots: {} });

test("a pin and a firkin of one run each carry their own amount", () => {
  assert.deepEqual(given(CASK), [
    { what: "primings", amount_ml: 126 },
    { what: "isinglass", amount_ml: 426 },
  ]);
  assert.deepEqual(given(PIN), [
    { what: "primings", amount_ml: 63 },
    { what: "isinglass", amount_ml: 213 },
  ]);
});

test("the lots in use are noted, with a fill and with a fining later", () => {
  const lots = { isinglass: "lot 1" };
  assert.deepEqual(
    fillDoses(known, "g318", CASK, {}, { instead: {}, lots }).map(({ lot }) => lot),
    [undefined, "lot 1"],
  );
  const full = container("117", FIRKIN, filled(1, null));
  assert.equal(finingFacts(known, full, {}, { instead: {}, lots })["lot"], "lot 1");
});

test("12 mL instead of what is worked out is what is noted, for that size only", () => {
  const instead = withAmount({}, "primings", 40_915, 12);
  assert.equal(given(CASK, instead)[0]?.["amount_ml"], 12);
  assert.equal(given(PIN, instead)[0]?.["amount_ml"], 63);
});

test("a dose that is not given is not noted, and one given back is as worked out", () => {
  const none = withAmount({}, "primings", 40_915, 0);
  assert.deepEqual(
    given(CASK, none).map(({ what }) => what),
    ["isinglass"],
  );
  assert.deepEqual(given(CASK, withAmount(none, "primings", 40_915, null)), given(CASK));
});

test("what could not be worked out is noted as a person says it", () => {
  assert.deepEqual(
    given(CASK, {}, "g319").map(({ what }) => what),
    ["isinglass"],
  );
  const typed = withAmount({}, "primings", 40_915, 50);
  assert.deepEqual(given(CASK, typed, "g319")[0], { what: "primings", amount_ml: 50 });
});

test("an amount is a whole figure, and no more than the cask takes", () => {
  assert.deepEqual(readAmount(" 12 ", "mL", 40_915), { amount: 12 });
  assert.deepEqual(readAmount("0", "g", 40_915), { amount: 0 });
  for (const text of ["", "1.5", "-3", "NaN", "40916", "lots"]) {
    assert.deepEqual(readAmount(text, "mL", 40_915), { fault: "Whole mL, from 0 to 40915." });
  }
});

test("a fining notes what was really given, and none is no fining", () => {
  const full = container("117", FIRKIN, filled(1, null, "g318", 40_915));
  const noted = (instead: Instead) => ({ instead, lots: {} });
  assert.deepEqual(finingFacts(known, full, {}, noted({})), { what: "isinglass", amount_ml: 426 });
  const less = withAmount({}, "isinglass", 40_915, 300);
  assert.equal(finingFacts(known, full, {}, noted(less))["amount_ml"], 300);
  assert.equal(finingRefusal(known, full, {}, less), null);
  const none = withAmount({}, "isinglass", 40_915, 0);
  assert.match(finingRefusal(known, full, {}, none) ?? "", /how much/);
});

test("an hour after alginate isinglass has to wait", () => {
  const alginate = { what: "auxiliary_alginate", amount_ml: 71 };
  const full = container("117", FIRKIN, filled(1, null, "g318"), [ago(0, 1), "dosed", alginate]);
  assert.match(finingRefusal(known, full, {}, {}) ?? "", /no isinglass until/);
});

test("beer that was fined already is told to take less, and that twice is too much sulphite", () => {
  const line = (...doses: object[]) => {
    const [at, kind, facts] = filled(1, null);
    return finingLine(
      known,
      container("117", FIRKIN, [at, kind, { ...facts, doses }]),
      {},
      { lots: {} },
    );
  };
  const fined = line({ what: "isinglass", amount_ml: 426 });
  // Twice 10.42 mL/L of 500 mg/L are over the 10 mg/L of Regulation (EU) 1169/2011, Annex II pt 12.
  assert.deepEqual(loudCautions(fined ? [fined] : []), ["declare_sulphites", "refining_at_half"]);
  const once = line();
  assert.deepEqual(loudCautions(once ? [once] : []), []);
});

test("a pH that is not the beer's usual one is said aloud, once enough gyles tell what is usual", () => {
  // Murphy & Son, pH of Beer: within 0.15 of the brand's own.
  const measuring = (ph_hundredths: number, ...before: number[]): Known => {
    const fields = { beer: "b1", present_gravity_e4: 10_090, highest_temp_decidegc: 200 };
    const others = before.map((ph, n): [string, object] => [
      `old ${n}`,
      doc({ beer: "b1", ph_hundredths: ph }),
    ]);
    const gyles = new Map([["g318", doc({ ...fields, ph_hundredths })], ...others]);
    return { ...known, gyles: gyles as unknown as Known["gyles"] };
  };
  const loud = (...phs: [number, ...number[]]) => {
    const line = finingLine(
      measuring(...phs),
      container("117", FIRKIN, filled(1, null)),
      {},
      { lots: {} },
    );
    return loudCautions(line ? [line] : []);
  };
  assert.deepEqual(loud(375, 400, 398, 402), ["ph_unlike_brand"]);
  assert.deepEqual(loud(385, 400, 398, 402), []);
  assert.deepEqual(loud(375, 400, 398), []);
  assert.equal(usualPh(measuring(375, 400, 398, 402), "g318"), 4);
});
