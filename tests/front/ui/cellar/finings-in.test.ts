// What finings put into a fill: isinglass that is still to come counts, and sulphite adds up.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { BeerFields } from "../../../../static/src/domain/record-fields.ts";
import type { Lot } from "../../../../static/src/domain/records.ts";
import type { Contents } from "../../../../static/src/domain/standing.ts";
import {
  type Fined,
  isinglassIn,
  sulphiteIn,
  sulphitesOnLabel,
  sulphiteWords,
} from "../../../../static/src/ui/cellar/finings-in.ts";
import { ago, container, FIRKIN, type Told } from "../brewery.ts";

const LOTS: ReadonlyMap<string, Lot> = new Map([
  ["weak", { fields: { what: "isinglass", so2_mg_per_l: 250 }, set_by: {} }],
]);
const BEER: Partial<BeerFields> = {
  isinglass_ml_per_hl: 1390,
  auxiliary: "auxiliary_alginate",
  auxiliary_ml_per_hl: 347,
};

/** A cask of 40 L with these doses. */
const holding = (...doses: object[]): Contents => {
  const fill: Told = [
    ago(1),
    "filled",
    { gyle: "g318", volume_ml: 40_000, best_before: null, doses },
  ];
  return container("117", FIRKIN, fill).contents as Contents;
};

const fined = (contents: Contents | null, more: Partial<Fined> = {}): Fined => ({
  contents,
  beer: BEER,
  gyle: {},
  lots: LOTS,
  ...more,
});

const ISINGLASS = { what: "isinglass", amount_ml: 556 };
const ALGINATE = { what: "auxiliary_alginate", amount_ml: 139 };

test("beer that had alginate is to be fined, and no label may call it vegan", () => {
  assert.equal(isinglassIn(fined(holding(ALGINATE))), true);
  assert.equal(isinglassIn(fined(holding({ what: "hops", amount_g: 20 }))), false);
  assert.equal(isinglassIn(fined(holding())), true);
  assert.equal(isinglassIn(fined(null, { beer: {} })), null);
  assert.equal(isinglassIn(fined(holding(), { beer: { ...BEER, vegan: true } })), false);
  const unfined = { beer: { ...BEER, isinglass_ml_per_hl: 0 } };
  assert.equal(isinglassIn(fined(holding(ALGINATE), unfined)), false);
});

test("what finings carry in: 13.9 mL/L x 500 + 3.47 x 300 = 8.0 mg/L, by dose or by rate", () => {
  // Murphy & Son, Function of Isinglass Finings; Function of Auxiliary Finings: the upper figures.
  for (const contents of [holding(ALGINATE, ISINGLASS), holding(ALGINATE), holding(), null]) {
    const carried = sulphiteIn(fined(contents), {})?.result.carried_in_mg_per_l ?? 0;
    assert.ok(Math.abs(carried - 8) < 0.02, String(carried));
  }
});

test("a lot's own sheet counts before what is published", () => {
  const contents = holding({ ...ISINGLASS, lot: "weak" });
  assert.equal(sulphiteIn(fined(contents), {})?.result.carried_in_mg_per_l, 3.48);
});

test("over 10 mg/L in total it is declared; with the beer's own not known only by finings alone", () => {
  const label = (own: number | undefined, contents: Contents) => {
    const gyle = own === undefined ? {} : { sulphite_decimg_per_l: own };
    return sulphitesOnLabel(sulphiteIn(fined(contents, { gyle }), {}));
  };
  const contents = holding(ISINGLASS);
  assert.equal(label(30, contents), 9.95);
  assert.equal(label(31, contents), 10.05);
  assert.equal(label(undefined, contents), null);
  assert.equal(label(undefined, holding({ ...ISINGLASS, amount_ml: 1000 })), 12.5);
});

test("the words say what is carried in, and what that means for the label", () => {
  const words = (own: number | undefined, contents: Contents) => {
    const gyle = own === undefined ? {} : { sulphite_decimg_per_l: own };
    const worked = sulphiteIn(fined(contents, { gyle }), {});
    return worked === null ? null : sulphiteWords(worked);
  };
  const contents = holding(ISINGLASS);
  assert.equal(words(40, contents), "10.95 mg/L, 6.95 of it by finings: to be declared.");
  assert.equal(words(10, contents), "7.95 mg/L, 6.95 of it by finings: need not be declared.");
  assert.equal(
    words(undefined, contents),
    "6.95 mg/L carried in by finings; the beer's own is not entered.",
  );
  assert.equal(words(undefined, holding({ what: "hops", amount_g: 20 })), "");
});

test("a dose that cannot be is told where it is noted, and nothing is known by it", () => {
  assert.equal(sulphiteIn(fined(holding({ ...ISINGLASS, amount_ml: 30_000 })), {}), null);
  assert.equal(sulphitesOnLabel(null), null);
});
