/** What a container holds by its weight. Twin of cellarapp/domain/bench/weight.py. */
import type { Settings } from "../figures.ts";
import { Asked, numberIn } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { beerGPerMl } from "./gravity.ts";

const METHODS = ["weighed", "metered", "by_eye"] as const;
const FIELDS = [
  "gross_g",
  "tare_g",
  "present_gravity",
  "beer_temp_c",
  "capacity_ml",
  "method",
] as const;

export type FillMethod = (typeof METHODS)[number];

/** The tare is that container's own; the capacity is nominal. */
export interface FillByWeightInputs {
  gross_g: number;
  tare_g: number;
  present_gravity: number;
  beer_temp_c: number;
  capacity_ml: number;
  method: FillMethod;
}

/** Overfill that the excise allows of a large pack; none stated for any other container. */
export function overfillMl(work: Working, capacityMl: number, method: FillMethod): number | null {
  const rule = work.figure("excise_overfill");
  if (capacityMl <= rule.large_pack_above_ml || capacityMl > rule.large_pack_up_to_ml) return null;
  if (method === "by_eye") {
    return rule.by_eye.find((step) => capacityMl <= step.up_to_ml)?.ml ?? null;
  }
  const { ml, above_ml, permille } = rule.measured;
  return capacityMl > above_ml ? (capacityMl * permille) / 1000 : ml;
}

/** The least that a sealed pack may hold: nominal less twice the tolerable error. */
export function leastMl(work: Working, capacityMl: number): number | null {
  const rule = work.figure("packaged_goods_tne");
  if (capacityMl > rule.up_to_ml) return null;
  const step = rule.steps.find((one) => capacityMl > one.above_ml);
  if (!step) return null;
  const error = step.ml + Math.ceil((capacityMl * step.permille) / 100) / 10;
  work.step("Tolerable negative error", error, "mL", 1);
  return capacityMl - 2 * error;
}

/** Nobody lifts a full cask alone: above the filter weights it is said. */
function lifting(work: Working, grossG: number): void {
  const filters = work.figure("lifting_filter_kg");
  if (grossG > filters.men * 1000) work.caution("lifting_beyond_filter");
  else if (grossG > filters.women * 1000) work.caution("lifting_near_filter");
}

function excise(work: Working, overMl: number, allowedMl: number | null) {
  if (allowedMl === null) return "no_rule";
  if (halfUp(overMl - allowedMl, 3) > 0) {
    work.caution("excise_overfilled");
    return "over";
  }
  if (overMl > 0) work.caution("steady_overfill");
  return "within";
}

function packer(work: Working, volumeMl: number, least: number | null) {
  if (least === null) return "no_rule";
  if (halfUp(least - volumeMl, 3) <= 0) return "within";
  work.caution("pack_underfilled");
  return "under";
}

/** FILL-1: litres from gross weight, tare, gravity and temperature, and whether that will do. */
export function fillByWeight(inputs: FillByWeightInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, FIELDS);
  const work = new Working(settings);
  const grossG = asked.number("gross_g");
  const why = "A container weighs no more than it does full.";
  const tareG = numberIn("tare_g", asked.number("tare_g"), 0, grossG, "g", why);
  const gravity = asked.number("present_gravity");
  const tempC = asked.number("beer_temp_c");
  const capacityMl = asked.number("capacity_ml");
  const method = asked.choice("method", METHODS, "How fills are measured at this brewery.");
  const density = beerGPerMl(work, gravity, tempC);
  work.step("Density of beer = gravity x density of water", density, "g/mL", 5);
  const volumeMl = (grossG - tareG) / density;
  work.step("Volume = (gross - tare) / density", volumeMl, "mL", 0);
  const overMl = volumeMl - capacityMl;
  const allowedMl = overfillMl(work, capacityMl, method);
  const least = leastMl(work, capacityMl);
  const result = {
    volume_ml: halfUpWhole(volumeMl),
    over_ml: halfUpWhole(overMl),
    allowed_over_ml: allowedMl === null ? null : halfUp(allowedMl, 1),
    excise: excise(work, overMl, allowedMl),
    least_ml: least === null ? null : halfUp(least, 1),
    packer: packer(work, volumeMl, least),
  };
  lifting(work, grossG);
  work.caution("weighed_in_air");
  return work.done(result);
}
