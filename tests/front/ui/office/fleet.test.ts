// The fleet by kind: what is counted where, how many go out in a week, and what is asked for.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { TripCounts } from "../../../../static/src/domain/fleet/trip-counts.ts";
import {
  askedOf,
  fleetOf,
  kindsInUse,
  standingDays,
} from "../../../../static/src/ui/office/fleet/fleet.ts";
import { standingWords, standsWords } from "../../../../static/src/ui/office/fleet/fleet-words.ts";
import { ago, container, FIRKIN, filled, KEG, NOW, type Told } from "../brewery.ts";

const sent = (days: number): Told => [ago(days), "sent", { customer: "c1", due_on: null }];
const OTHERS: Told = [ago(90), "registered", { kind: "firkin", capacity_ml: 40915, owner: "Wold" }];
const FLEET = [
  container("101", FIRKIN),
  container("102", FIRKIN, filled(3, null)),
  container("103", FIRKIN, filled(40, null), sent(30)),
  container("104", FIRKIN, filled(300, null), sent(200), [ago(50), "missing", {}]),
  container("105", FIRKIN, filled(300, null), sent(299), [ago(20), "scrapped", {}]),
  container("106", FIRKIN, [ago(9), "set_aside", { why: "leaks" }]),
  container("201", OTHERS),
  container("K1", KEG),
];
const TRIPS = new Map<string, TripCounts>([
  [
    "c1",
    {
      ended: { firkin: [[0, 20, 9, 1]], keg_30: [[0, 5, 1, 0]] },
      begun: { firkin: { "2026-08": 6, "2026-09": 4, "2026-11": 3 }, keg_30: { "2026-10": 1 } },
    },
  ],
]);
const fleet = fleetOf("firkin", FLEET, TRIPS, NOW);

test("each stands in one place, and those of others and the scrapped do not count", () => {
  const { full, empty, out, missing, aside, lostAYear } = fleet;
  assert.deepEqual([full, empty, out.length, missing, aside, lostAYear], [1, 1, 1, 1, 1, 1]);
  assert.deepEqual(kindsInUse(FLEET), ["firkin", "keg_30"]);
});

test("what goes out in a week is counted by whole months since the records began", () => {
  // May with the missing one, August, September and October: 12 in six months.
  assert.equal(Math.round(fleet.sentAWeek * 100), 46);
  assert.equal(standingDays(fleet, {}), 30);
  assert.equal(fleetOf("pin", FLEET, TRIPS, NOW).sentAWeek, 0);
});

test("how long one stands is said where enough go out to tell, and in a sentence of its own", () => {
  assert.equal(
    standingWords(standingDays(fleet, {})),
    "By what stands here and goes out in a week it is 30 days now (Little’s law).",
  );
  assert.equal(standingDays(fleetOf("pin", FLEET, TRIPS, NOW), {}), null);
  assert.equal(standingDays(fleet, { own_trips_enough: 13 }), null);
  assert.equal(standingDays({ ...fleet, empty: 80 }, {}), null);
  assert.equal(standingWords(null), "");
});

test("where they stand adds up", () => {
  assert.equal(
    standsWords(fleet),
    "1 full and 1 empty at the brewery, 1 out, 1 set aside, 1 missing.",
  );
});

test("what is still out, the missing too, counts as not back yet", () => {
  const asked = askedOf(fleet, { fillsAWeek: 2, homeDays: 21 }, NOW, { firkin_value_pounds: 80 });
  assert.deepEqual(
    asked.trips.map(({ days, returned, open }) => [days, returned, open]),
    [
      [20, 9, 1],
      [30, 0, 1],
      [200, 0, 1],
    ],
  );
  assert.deepEqual(asked.out, [{ days_out: 30 }]);
  assert.equal(asked.at_home, 2);
  assert.equal(asked.value_pounds, 80);
});
