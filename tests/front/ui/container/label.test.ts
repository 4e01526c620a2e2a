// What to write on a container, and what warm days have cost it.

import assert from "node:assert/strict";
import { test } from "node:test";
import { agedOf, labelOf, labelOfGyle } from "../../../../static/src/ui/container/label.ts";
import type { Known } from "../../../../static/src/ui/words/known.ts";
import { ago, container, FIRKIN, filled, known as plain, type Told } from "../brewery.ts";

const doc = (fields: object, more: object = {}) => ({ fields, set_by: {}, ...more });

const knowing = (beer: object, temp_decidegc = 120): Known =>
  ({
    ...plain,
    beers: new Map([["b1", doc({ name: "Oystercatcher", ...beer })]]),
    places: new Map([["cold", doc({ name: "Cold room", temp_decidegc }, { temperatures: [] })]]),
  }) as unknown as Known;

const BARLEY = { abv_tenths: 42, cereals: ["barley"], milk: false };

const saysOf = (beer: object, ...told: Parameters<typeof container>[1][]) => {
  const label = labelOf(container("104", FIRKIN, ...told), knowing(beer), {});
  assert.ok(label);
  return { ...label, lines: new Map(label.lines.map(({ what, says }) => [what, says])) };
};

test("an empty container has no label", () => {
  assert.equal(labelOf(container("104", FIRKIN), plain, {}), null);
  assert.equal(agedOf(container("104", FIRKIN), plain, {}), null);
});

test("the date as the law writes it, the lot, the strength and the allergens", () => {
  const { lines, missing } = saysOf(BARLEY, filled(20, "2026-12-18"));
  assert.match(
    lines.get("Date") ?? "",
    /^Best before 18 December 2026\. Allowed too: Best before 18 December\.$/,
  );
  assert.equal(lines.get("Lot"), "L318-051126");
  assert.equal(lines.get("Strength"), "Alc. 4.2 % vol");
  assert.equal(lines.get("Allergens"), "Contains barley (gluten)");
  assert.match(
    lines.get("On the cask itself") ?? "",
    /^The beer's name, the date and who made it\./,
  );
  assert.deepEqual(missing, []);
});

test("fined beer is not vegan, and what nobody has said is not either", () => {
  assert.match(saysOf(BARLEY, filled(20, null)).lines.get("Vegan") ?? "", /^Not/);
  const vegan = saysOf({ ...BARLEY, vegan: true }, filled(20, null));
  assert.match(vegan.lines.get("Vegan") ?? "", /^May/);
});

test("a gyle's labels say the same before there is a cask of it", () => {
  const beer = { ...BARLEY, best_before_days: 42, isinglass_ml_per_hl: 600 };
  const label = labelOfGyle("g318", knowing(beer), {});
  const lines = new Map(label?.lines.map(({ what, says }) => [what, says]));
  assert.match(lines.get("Date") ?? "", /^Best before 6 January 2027\./);
  assert.equal(lines.get("Lot"), "L318-251126");
  assert.equal(lines.get("Allergens"), "Contains barley (gluten)");
  assert.match(lines.get("Vegan") ?? "", /^Not/);
  assert.equal(labelOfGyle("unknown", knowing(beer), {}), null);
});

test("sulphite that finings carry in stands beside the words, and is declared where it must be", () => {
  const isinglass = (amount_ml: number): Told => [
    ago(19),
    "dosed",
    { what: "isinglass", amount_ml },
  ];
  const few = saysOf(BARLEY, filled(20, null), isinglass(426));
  assert.match(
    few.lines.get("Sulphites") ?? "",
    /^5\.21 mg\/L carried in by finings; the beer's own/,
  );
  assert.equal(few.lines.get("Allergens"), "Contains barley (gluten)");
  const many = saysOf(BARLEY, filled(20, null), isinglass(900));
  assert.equal(many.lines.get("Allergens"), "Contains barley (gluten), sulphites");
  assert.equal(saysOf(BARLEY, filled(20, null)).lines.has("Sulphites"), false);
});

test("what is not entered is named", () => {
  const { lines, missing } = saysOf({}, filled(20, "2026-12-18"));
  assert.deepEqual(missing, ["its strength", "its cereals", "whether there is milk in it"]);
  assert.deepEqual([...lines.keys()], ["Lot"]);
});

test("without a best-before day no date is made up", () => {
  assert.equal(saysOf(BARLEY, filled(20, null)).lines.has("Date"), false);
});

test("warm days cost life, and the date on it stands", () => {
  const cask = container("104", FIRKIN, [
    ago(20),
    "filled",
    { gyle: "g318", volume_ml: 40_900, best_before: null, place: "cold" },
  ]);
  const warm = agedOf(cask, knowing(BARLEY, 220), {});
  assert.match(
    warm?.says ?? "",
    /^Racked 20 days ago; warm days have cost it about \d+ days more\./,
  );
  assert.match(agedOf(cask, knowing(BARLEY, 120), {})?.says ?? "", /no more than that/);
});

test("the strength to expect is told beside the label's, by what was noted with the fill", () => {
  const beer = { ...BARLEY, limit_gravity_e4: 10_095, priming_sugar: "sucrose" };
  const gyle = { number: "318", beer: "b1", original_gravity_e4: 10_420 };
  const measured = {
    ...knowing(beer),
    gyles: new Map([["g318", doc(gyle, { drawn_ml: 0 })]]),
  } as unknown as Known;
  const [at, kind, facts] = filled(20, null, "g318", 40_000);
  const doses = [{ what: "primings", amount_g: 120 }];
  const cask = container("104", FIRKIN, [at, kind, { ...facts, doses }]);
  const label = labelOf(cask, measured, {});
  const inIt = label?.lines.find(({ what }) => what === "In it")?.says;
  // 1042.0 to 1009.5 is 4.1925 by the published table; 3 g/L of sucrose add 0.194
  assert.match(inIt ?? "", /^4\.39 % vol to expect/);
  assert.match(inIt ?? "", /4\.2 % on the label is within the 0\.5 % that the law allows\.$/);
  assert.ok(label?.worked.some(({ figures }) => figures.includes("excise_strength_factors")));
  const unmeasured = labelOf(cask, knowing(beer), {});
  assert.equal(
    unmeasured?.lines.some(({ what }) => what === "In it"),
    false,
  );
});
