// Kegs that are carbonated: a pressure instead of sugar, and never above the keg's own limit.

import assert from "node:assert/strict";
import { test } from "node:test";
import { carbonating } from "../../../../static/src/ui/bench/carbonating.ts";
import { doseLines, type Racked } from "../../../../static/src/ui/bench/doses.ts";

const BEER: Racked["beer"] = {
  target_co2_centivols: 150,
  priming_sugar: "sucrose",
  limit_gravity_e4: 10_090,
  isinglass_ml_per_hl: 850,
  keg_co2_centivols: 240,
};
const KEG = { kind: "keg_30", volume_ml: 30_000, count: 4, limit_millibar: 3000 };
const CASK = { kind: "firkin", volume_ml: 40_915, count: 2, limit_millibar: null };
const racked = (sizes: Racked["sizes"], beer = BEER): Racked => ({
  beer,
  gyle: { present_gravity_e4: 10_090, highest_temp_decidegc: 200 },
  sizes,
  settings: {},
});

test("2.4 volumes at 10 °C are 16.3 psi, as the published chart has them", () => {
  // brewery.org CO2 chart: 50 °F, 2.4 volumes, 16.3 psi = 1.12 bar
  const found = carbonating(racked([KEG]), 10);
  assert.equal(found?.kegs[0]?.bar, 1.12);
  assert.ok(found?.worked[0]?.cautions.includes("regulator_and_relief"));
});

test("never above the keg's marked limit", () => {
  const found = carbonating(racked([{ ...KEG, limit_millibar: 1000 }]), 10);
  assert.deepEqual(
    found?.kegs.map(({ bar, limitBar }) => [bar, limitBar]),
    [[null, 1]],
  );
});

test("such a keg gets no sugar and no finings, the casks beside it theirs", () => {
  assert.deepEqual(doseLines(racked([KEG])), []);
  const lines = doseLines(racked([CASK, KEG]));
  assert.deepEqual(
    lines.map(({ what, each }) => [what, each?.length]),
    [
      ["primings", 1],
      ["isinglass", 1],
    ],
  );
});

test("a keg of a beer that says nothing of kegs is filled as a cask is", () => {
  const { keg_co2_centivols: _, ...beer } = BEER;
  assert.equal(carbonating(racked([KEG], beer), 4), null);
  assert.equal(doseLines(racked([KEG], beer))[0]?.what, "primings");
});

test("volumes beyond the chart are told, not worked with", () => {
  const found = carbonating(racked([KEG], { ...BEER, keg_co2_centivols: 350 }), 4);
  assert.deepEqual(found?.missing, {
    of: "beer",
    words: ["CO2 wanted in a keg from 2 to 3 vol"],
  });
});
