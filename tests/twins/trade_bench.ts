/** The bench's rules on the phone, by the names of cellarapp/domain/bench/calculations.py. */
import { co2InBeer, fromExtractVol, residualVol } from "../../static/src/domain/bench/co2.ts";
import { finingsConditions, sulphite } from "../../static/src/domain/bench/finings-conditions.ts";
import {
  finingsLife,
  movesAfterFining,
  vegan,
} from "../../static/src/domain/bench/finings-lots.ts";
import { finingsOrder } from "../../static/src/domain/bench/finings-order.ts";
import { extractGPerL, plato, waterGPerMl } from "../../static/src/domain/bench/gravity.ts";
import {
  kegBar,
  kegPressure,
  sealedBar,
  sealedPressure,
} from "../../static/src/domain/bench/pressure.ts";
import { primings } from "../../static/src/domain/bench/primings.ts";
import { rackingPlan } from "../../static/src/domain/bench/racking.ts";
import { caskHops, finingsDose } from "../../static/src/domain/bench/rates.ts";
import { benchSheet } from "../../static/src/domain/bench/sheet.ts";
import { solutionState, titration } from "../../static/src/domain/bench/solution.ts";
import { expectedStrength, strength } from "../../static/src/domain/bench/strength.ts";
import {
  co2PerGram,
  type SugarName,
  strengthRisePct,
} from "../../static/src/domain/bench/sugars.ts";
import { trialLadder, trialProposal } from "../../static/src/domain/bench/trial.ts";
import { causticDilution, peraceticDilution } from "../../static/src/domain/bench/washing.ts";
import { fillByWeight } from "../../static/src/domain/bench/weight.ts";
import { cut, halfUp } from "../../static/src/domain/rounding.ts";
import { Working } from "../../static/src/domain/working.ts";

export const BENCH = {
  co2_in_beer: co2InBeer,
  primings,
  sealed_pressure: sealedPressure,
  keg_pressure: kegPressure,
  finings_dose: finingsDose,
  cask_hops: caskHops,
  finings_order: finingsOrder,
  finings_conditions: finingsConditions,
  sulphite,
  finings_life: finingsLife,
  moves_after_fining: movesAfterFining,
  vegan,
  trial_ladder: trialLadder,
  trial_proposal: trialProposal,
  racking_plan: rackingPlan,
  bench_sheet: benchSheet,
  fill_by_weight: fillByWeight,
  strength,
  expected_strength: expectedStrength,
  peracetic_dilution: peraceticDilution,
  caustic_dilution: causticDilution,
  titration,
  solution_state: solutionState,
};

const sugar = (hexoseG: number) => ({ name: "sucrose" as SugarName, dryG: 1, hexoseG });

/** What stands behind the rounded figures, as it is before rounding. */
export const UNROUNDED = {
  half_up: halfUp,
  cut,
  plato: (gravity: number) => plato(new Working(), gravity),
  water_g_per_ml: (tempC: number) => waterGPerMl(new Working(), tempC),
  extract_g_per_l: (gravity: number) => extractGPerL(new Working(), gravity),
  residual_vol: (tempC: number) => residualVol(new Working(), tempC),
  from_extract_vol: (present: number, limit: number) =>
    fromExtractVol(new Working(), present, limit),
  sealed_bar: (vol: number, tempC: number) => sealedBar(new Working(), vol, tempC, ""),
  keg_bar: (tempC: number, vol: number) => kegBar(new Working(), tempC, vol),
  co2_per_gram: (hexoseG: number) => co2PerGram(new Working(), sugar(hexoseG), "full"),
  strength_rise_pct: (hexoseG: number, gPerL: number) =>
    strengthRisePct(new Working(), sugar(hexoseG), gPerL),
};
