// The pressure that a closed cask comes to, by the sugar that is really given; a warning in time.

import assert from "node:assert/strict";
import { test } from "node:test";
import { cautionLine, closedOf, closedWords } from "../../../../static/src/ui/bench/closed.ts";
import { doseLines, type Racked } from "../../../../static/src/ui/bench/doses.ts";
import { withAmount } from "../../../../static/src/ui/bench/instead.ts";

const BEER: Racked["beer"] = {
  target_co2_centivols: 200,
  priming_sugar: "sucrose",
  limit_gravity_e4: 10_090,
};
const GYLE: Racked["gyle"] = { present_gravity_e4: 10_090, measured_co2_centivols: 100 };
const size = (limit_millibar: number | null = null) => [
  { kind: "firkin", volume_ml: 40_915, count: 1, limit_millibar },
];
const lines = (sizes = size(), beer = BEER, gyle = GYLE) =>
  doseLines({ beer, gyle, sizes, settings: {} });

test("2.0 volumes are some 0.9 bar at 13 °C, and more on a warm dray", () => {
  // dosing reference, sealed cask by Henry's law: 13 °C, 2.0 vol 0.91 bar
  const closed = closedOf(lines(), {});
  assert.ok(closed);
  const words = closedWords(closed, { cellar_temp_c: 13 });
  assert.ok(Math.abs(closed.result.cellar_bar - 0.87) < 0.05, `${closed.result.cellar_bar}`);
  assert.match(
    words.says,
    /^Closed: 0\.\d bar in the cellar at 13 °C, [12]\.\d bar on a dray at 30/,
  );
});

test("with the amount as worked out it is the pressure that the dose itself says", () => {
  const [primings] = lines();
  const result = primings?.worked[0]?.result as { pressure: { dray_bar: number } };
  const closed = closedOf(lines(), {});
  assert.ok(Math.abs((closed?.result.dray_bar ?? 0) - result.pressure.dray_bar) < 0.02);
});

test("three times the sugar is warned of before it is given", () => {
  const [primings] = lines();
  const proposed = primings?.each?.[0] ?? 0;
  const thrice = withAmount({}, "primings", 40_915, proposed * 3);
  const closed = closedOf(lines(), thrice);
  assert.ok(closed);
  assert.equal(closedWords(closed, {}).look, true);
  assert.match(cautionLine(lines(), thrice).says, /^\d\.\d bar when warm: /);
});

test("a cask marked for little is warned of sooner", () => {
  const beer = { ...BEER, target_co2_centivols: 140 };
  assert.equal(cautionLine(lines(size(), beer), {}).says, "");
  const marked = cautionLine(lines(size(1000), beer), {});
  assert.equal(marked.look, true);
  assert.match(marked.says, /bar when warm: That reaches the pressure/);
});

test("a kilogram more than any rule reckons with is danger, not a fault", () => {
  const closed = closedOf(lines(), withAmount({}, "primings", 40_915, 90_000));
  assert.ok(closed?.cautions.includes("pressure_at_limit"));
});

test("extract that overshoots gives no sugar, says why, and its pressure is told", () => {
  const gyle = { ...GYLE, present_gravity_e4: 10_160 };
  const all = lines(size(), BEER, gyle);
  assert.deepEqual(all[0]?.each, [0]);
  assert.equal(all[0]?.note, "none: enough extract");
  assert.match(cautionLine(all, {}).says, /\d more\.$|more CO2 than is wanted/);
});

test("a beer with no primings has no such pressure", () => {
  assert.equal(closedOf(lines(size(), { priming_sugar: "none" }), {}), null);
});
