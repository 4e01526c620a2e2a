// Many spells of work under a bad network and with crashes, each from its seed.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FAULTS } from "./bad-network.ts";
import { Simulation } from "./simulation.ts";

const SEEDS = Number(process.env["SIMULATION_SEEDS"] ?? 60);
const FIRST = Number(process.env["SIMULATION_FIRST"] ?? 1);
const STEPS = 40;

test("whatever the network and the pages do, nothing is lost and all agree at the end", async () => {
  const seen = new Map<string, number>();
  let exactViews = 0;
  for (let seed = FIRST; seed < FIRST + SEEDS; seed += 1) {
    const simulation = new Simulation(seed);
    try {
      await simulation.run(STEPS);
    } catch (error) {
      throw new Error(`seed ${seed}: ${error}`, { cause: error });
    }
    exactViews += simulation.world.exactViews;
    for (const [fault, times] of simulation.network.seen) {
      seen.set(fault, (seen.get(fault) ?? 0) + times);
    }
  }
  for (const fault of [...FAULTS, "crash"]) {
    assert.ok((seen.get(fault) ?? 0) > 0, `"${fault}" never happened`);
  }
  assert.ok(exactViews > SEEDS * STEPS, `only ${exactViews} standings were looked at`);
});
