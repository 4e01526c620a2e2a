// The strength to expect in the cask, and whether the label is near enough to it.

import assert from "node:assert/strict";
import { test } from "node:test";
import { doseLines, type Racked } from "../../../../static/src/ui/bench/doses.ts";
import {
  addedBy,
  expectedIn,
  expectedPct,
  expectedWords,
  labelledWords,
} from "../../../../static/src/ui/bench/expected.ts";

const recipe = (beer: Racked["beer"], gyle: Racked["gyle"] = {}) => ({
  beer: { limit_gravity_e4: 10_095, abv_tenths: 42, ...beer },
  gyle: { original_gravity_e4: 10_420, present_gravity_e4: 10_110, ...gyle },
  settings: {},
});
const LITRE = 1000;

test("it falls to its limit first: 1042.0 to 1009.5 by the published table", () => {
  // Excise Notice 226, 30.2 and 30.3: 32.5 x 0.129 = 4.1925
  const expected = expectedIn(recipe({}), [], LITRE);
  assert.equal(expected.worked?.result.before_pct, 4.193);
  assert.equal(expected.worked?.result.duty_strength_pct, 4.1);
  assert.equal(expectedPct(expected), "4.19");
  assert.equal(expectedWords(expected), "4.19 after the second fermentation");
});

test("3 g of sucrose in a litre add 0.19, and what is added thins", () => {
  // By Balling's balance, reference section 2.6: 3 g/L sucrose is 0.19 % vol
  const dry = expectedIn(
    recipe({ priming_sugar: "sucrose" }),
    [{ what: "primings", amount_g: 3 }],
    LITRE,
  );
  assert.equal(dry.worked?.result.rise_pct, 0.194);
  // 4 pints in a barrel of 288 are 13.89 mL/L: 1.389 % less
  const thinned = expectedIn(recipe({}), [{ what: "isinglass", amount_ml: 13.889 }], LITRE);
  assert.equal(thinned.worked?.result.thinned_pct, 4.134);
});

test("syrup counts by the sugar in it, by its gravity too", () => {
  const added = [{ what: "primings", amount_ml: 10 }];
  const bySugar = recipe({ priming_sugar: "sucrose", syrup_g_per_l: 400 });
  const byGravity = recipe({ priming_sugar: "sucrose", syrup_gravity_e4: 11_500 });
  const rise = (one: typeof bySugar) => expectedIn(one, added, LITRE).worked?.result.rise_pct ?? 0;
  assert.ok(Math.abs(rise(bySugar) - 0.258) < 0.002, `${rise(bySugar)}`);
  // SG 1.150 holds 393.1 g of extract in a litre
  assert.ok(Math.abs(rise(byGravity) / rise(bySugar) - 393.1 / 400) < 0.01);
});

test("what was worked out for a cask goes in as it would be noted", () => {
  const beer = { priming_sugar: "sucrose", target_co2_centivols: 150, isinglass_ml_per_hl: 1042 };
  const { beer: all, gyle } = recipe(beer, { highest_temp_decidegc: 200 });
  const sizes = [{ kind: "firkin", volume_ml: 40_915, count: 3, limit_millibar: null }];
  const added = addedBy(doseLines({ beer: all, gyle, sizes, settings: {} }));
  assert.deepEqual(
    added?.map(({ what }) => what),
    ["primings", "isinglass"],
  );
  assert.equal(addedBy(doseLines({ beer: all, gyle: {}, sizes, settings: {} })), null);
});

test("a label half a per cent off is within the law, more is not", () => {
  const expected = expectedIn(recipe({}), [], LITRE);
  const near = labelledWords(expected, 42);
  assert.equal(near.says, "4.2 % on the label is within the 0.5 % that the law allows");
  const off = expectedIn(recipe({ abv_tenths: 36 }), [], LITRE);
  const words = labelledWords(off, 36);
  assert.equal(words.look, true);
  assert.equal(words.says, "3.6 % on the label is 0.59 % off: by law 0.5 % at most");
});

test("what is not entered is named, and a gravity that rose is told", () => {
  const none = expectedIn({ beer: {}, gyle: {}, settings: {} }, [], LITRE);
  assert.deepEqual(none.missing, { of: "gyle", words: ["original gravity"] });
  const risen = expectedIn(recipe({}, { original_gravity_e4: 10_050 }), [], LITRE);
  assert.equal(risen.missing?.of, "gyle");
  assert.match(risen.missing?.words[0] ?? "", /^gravities with a fall from 0/);
});
