// Solutions: made up by their sheet or refused in words, and what their log says of them.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Solution } from "../../../../static/src/domain/records.ts";
import { limitOf, readMaking, START } from "../../../../static/src/ui/bench/washing/making.ts";
import { inUse, solutionWords } from "../../../../static/src/ui/bench/washing/solution.ts";
import { ago, known } from "../brewery.ts";

const SHEET = { strengthPct: "5", density: "1.1", contactMin: "10", rinse: "no" };
const PERACETIC = { ...START, ...SHEET, target: "200", litres: "50", tempC: "15" };

const solution = (fields: Solution["fields"], uses = 0, checked: number[] = []): Solution => ({
  fields: { agent: "peracetic", made_mg_per_l: 200, least_mg_per_l: 120, ...fields },
  set_by: {},
  uses,
  checks: checked.map((strength_mg_per_l, n) => ({
    strength_mg_per_l,
    key: `${n}`,
    since: ago(0),
    entry: `e${n}`,
    by: "Ann",
    inferred: false,
  })),
});

test("200 mg/L from a product of 5 % by weight is 3.64 mL in a litre", () => {
  const { worked, madeMgPerL } = readMaking(PERACETIC, {});
  assert.equal(worked?.result.product_ml_per_l, 3.64);
  assert.equal(madeMgPerL, 200);
});

test("what the sheet does not say is asked for, rinse too", () => {
  assert.match(
    readMaking({ ...PERACETIC, density: "" }, {}).fault ?? "",
    /^Density of the product/,
  );
  assert.equal(readMaking({ ...PERACETIC, rinse: "" }, {}).fault, "Rinse: say yes or no.");
});

test("caustic says of what its per cent is, and is not for aluminium", () => {
  const caustic = { ...START, ...SHEET, agent: "caustic" as const, target: "2", litres: "50" };
  assert.equal(readMaking(caustic, {}).fault, "Say what the % is of.");
  const made = { ...caustic, ofWhat: "naoh_w_v", strengthPct: "32", density: "1.35" };
  assert.equal(readMaking(made, {}).madeMgPerL, 20_000);
  assert.equal(readMaking({ ...made, metal: "aluminium" }, {}).madeMgPerL, null);
});

test("a weak solution is not used again, and says why", () => {
  const { says, tone } = solutionWords(solution({ made_at: ago(0, 2) }, 3, [100]), known, {});
  assert.equal(tone, "look");
  assert.match(says, /^Not again: too weak\. 100 mg\/L as checked, made 10:00, 3 uses\.$/);
  assert.equal(solutionWords(solution({ made_at: ago(0, 2) }), known, {}).tone, "fine");
});

test("what was thrown away is offered no more, the last made stands first", () => {
  const all = new Map([
    ["a", solution({ made_at: ago(2) })],
    ["b", solution({ made_at: ago(1) })],
    ["c", solution({ made_at: ago(0), thrown_away: true })],
  ]);
  assert.deepEqual(
    inUse(all).map(([id]) => id),
    ["b", "a"],
  );
});

test("a limit on uses or hours is whole, in its range, or none", () => {
  assert.equal(limitOf(" "), null);
  assert.equal(limitOf("60"), 60);
  for (const text of ["0", "10001", "1.5", "often"]) assert.equal(limitOf(text), "odd", text);
});
