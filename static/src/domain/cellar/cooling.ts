/** COOL: how long a container takes to come to its cellar's temperature. Twin of cellarapp/domain/cellar/cooling.py. */
import { outOfRange } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { plain } from "./times.ts";

const BETWEEN_WHY = "A temperature on the way from the beer's to the air's, and not the air's own.";

export interface CoolingInputs {
  from_temp_c: number;
  air_temp_c: number;
  to_temp_c: number;
  holds_ml?: number | null;
}

export interface CooledInputs {
  from_temp_c: number;
  air_temp_c: number;
  after_hours: number;
  holds_ml?: number | null;
}

/** COOL-1: hours in which the way shrinks to 37 %: by the cube root of the size, or longer. */
export function tauHours(work: Working, volumeMl: number | null): number {
  const tau = work.setting("cooling_hours");
  const ofMl = work.figure("cooling_hours_of_ml");
  return volumeMl === null || volumeMl <= ofMl ? tau : tau * (volumeMl / ofMl) ** (1 / 3);
}

/** COOL-2: the beer's temperature after so many hours in that air. */
export const tempAfter = (fromC: number, airC: number, hours: number, tau: number): number =>
  airC + (fromC - airC) * Math.exp(-hours / tau);

/** COOL-3: hours until the beer has come that far; the target lies between beer and air. */
export const hoursTo = (fromC: number, airC: number, toC: number, tau: number): number =>
  tau * (Math.log(Math.abs(fromC - airC)) - Math.log(Math.abs(toC - airC)));

/** COOL-4: hours until beer of one temperature comes to another in air of a third. */
export function cooling(inputs: CoolingInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["from_temp_c", "air_temp_c", "to_temp_c", "holds_ml"]);
  const work = new Working(settings);
  const fromC = asked.number("from_temp_c");
  const airC = asked.number("air_temp_c");
  const toC = asked.number("to_temp_c");
  if (!((fromC >= toC && toC > airC) || (fromC <= toC && toC < airC))) {
    const range = { low: Math.min(fromC, airC), high: Math.max(fromC, airC), unit: "°C" };
    throw outOfRange({ field: "to_temp_c", given: toC, ...range, why: BETWEEN_WHY });
  }
  const tau = tauHours(work, asked.maybeNumber("holds_ml"));
  work.step("tau, for this size", tau, "hours", 2);
  const hours = hoursTo(fromC, airC, toC, tau);
  const [from, air, to] = [plain(fromC), plain(airC), plain(toC)];
  work.step(`t = tau ln((${from} - ${air}) / (${to} - ${air}))`, hours, "hours", 1);
  work.caution("cooling_is_estimate");
  return work.done({ hours: halfUp(hours, 1) });
}

/** COOL-5: the beer's temperature after so many hours. */
export function cooled(inputs: CooledInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["from_temp_c", "air_temp_c", "after_hours", "holds_ml"]);
  const work = new Working(settings);
  const fromC = asked.number("from_temp_c");
  const airC = asked.number("air_temp_c");
  const tau = tauHours(work, asked.maybeNumber("holds_ml"));
  const tempC = tempAfter(fromC, airC, asked.number("after_hours"), tau);
  work.step("T = air + (from - air) e^(-t / tau)", tempC, "°C", 2);
  work.caution("cooling_is_estimate");
  return work.done({ temp_c: halfUp(tempC, 2) });
}
