/** What a hydrometer reading stands for. Twin of cellarapp/domain/bench/gravity.py. */
import type { Working } from "../working.ts";

/** Extract in °P, % of the weight, of a specific gravity at 20/20 °C. */
export function plato(work: Working, gravity: number): number {
  const [one, first, second, third] = work.figure("plato_curve") as [
    number,
    number,
    number,
    number,
  ];
  return one + gravity * (first + gravity * (second + gravity * third));
}

/** Density of water, 0 to 40 °C. */
export function waterGPerMl(work: Working, tempC: number): number {
  const k = work.figure("water_density");
  const low = (tempC + k.a1) ** 2 * (tempC + k.a2);
  const high = k.a3 * (tempC + k.a4);
  return (k.a5 * (1 - low / high)) / 1000;
}

/** Density of beer, which swells with warmth as water does. */
export function beerGPerMl(work: Working, gravity: number, tempC: number): number {
  return gravity * waterGPerMl(work, tempC);
}

/** Grams of extract, taken as sugar, in a litre of that gravity at 20 °C. */
export function extractGPerL(work: Working, gravity: number): number {
  const weightG = 1000 * beerGPerMl(work, gravity, work.figure("gravity_reference_c"));
  return (weightG * plato(work, gravity)) / 100;
}
