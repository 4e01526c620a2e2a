/** ROUND: in what order the van makes its stops. Twin of cellarapp/domain/fleet/stops.py. */
import { figure, type Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { radians } from "./units.ts";

const MOST_STOPS = 60;
const METRES = 1000;
const MILLIONTHS = 1_000_000;
const NAMES = ["latitude_e6", "longitude_e6"];

/** A place on the map, in millionths of a degree. */
export interface Place {
  latitude_e6: number;
  longitude_e6: number;
}

export interface RoundInputs {
  /** Where the brewery is. */
  start?: Place | null;
  /** Where the van is, on its way already. */
  van?: Place | null;
  stops: readonly Partial<Place>[];
}

const radiansOf = (degreesE6: number): number => radians(degreesE6 / MILLIONTHS);

/** ROUND-1: the way over the sphere in whole metres, by the haversine formula. */
function greatCircleM(here: Place, there: Place): number {
  const one = radiansOf(here.latitude_e6);
  const other = radiansOf(there.latitude_e6);
  const roundBy = radiansOf(there.longitude_e6 - here.longitude_e6);
  const a =
    Math.sin((other - one) / 2) ** 2 + Math.cos(one) * Math.cos(other) * Math.sin(roundBy / 2) ** 2;
  const radiusM = figure("earth_radius_km") * METRES;
  return halfUpWhole(2 * radiusM * Math.asin(Math.min(1, Math.sqrt(a))));
}

/** A stop; null is where the van is, or where it goes home to. */
type At = number | null;

/** The ways between stops, to the first from where the van is, and home from the last. */
class Ways {
  readonly #between: number[][];
  readonly #out: number[];
  readonly #home: number[];

  constructor(van: Place | null, home: Place | null, stops: readonly Place[]) {
    const to = (end: Place | null) =>
      stops.map((stop) => (end === null ? 0 : greatCircleM(end, stop)));
    this.#between = stops.map((here) => stops.map((there) => greatCircleM(here, there)));
    this.#out = to(van);
    this.#home = to(home);
  }

  legM(here: At, there: At): number {
    if (here === null) return there === null ? 0 : (this.#out[there] as number);
    if (there === null) return this.#home[here] as number;
    return this.#between[here]?.[there] as number;
  }

  totalM(order: readonly number[]): number {
    const ends: At[] = [...order, null];
    return ends.reduce<number>((sum, there, n) => sum + this.legM(order[n - 1] ?? null, there), 0);
  }

  /** ROUND-2: from the first stop on always to the nearest that is left. */
  nearestNext(first: number): number[] {
    const order = [first];
    const left = new Set(this.#home.keys());
    left.delete(first);
    for (let here = first; left.size > 0; ) {
      let nearest: At = null;
      for (const n of left) {
        if (nearest === null || this.legM(here, n) < this.legM(here, nearest)) nearest = n;
      }
      here = nearest as number;
      left.delete(here);
      order.push(here);
    }
    return order;
  }

  /** ROUND-3: turned round between two stops wherever that is shorter, until nowhere is. */
  uncrossed(order: readonly number[]): number[] {
    const found = [...order];
    const at = (n: number): At => found[n] ?? null;
    for (let shorter = true; shorter; ) {
      shorter = false;
      for (let i = 0; i < found.length - 1; i++) {
        for (let j = i + 1; j < found.length; j++) {
          const now = this.legM(at(i - 1), at(i)) + this.legM(at(j), at(j + 1));
          const turned = this.legM(at(i - 1), at(j)) + this.legM(at(i), at(j + 1));
          if (turned < now) {
            found.splice(i, j + 1 - i, ...found.slice(i, j + 1).reverse());
            shorter = true;
          }
        }
      }
    }
    return found;
  }
}

/** ROUND-4: the shortest of those found with each stop in turn as the first. */
function shortest(ways: Ways, count: number): number[] {
  let best: number[] = [];
  for (let first = 0; first < count; first++) {
    const order = ways.uncrossed(ways.nearestNext(first));
    if (first === 0 || ways.totalM(order) < ways.totalM(best)) best = order;
  }
  return best;
}

const placeOf = (asked: Asked): Place => ({
  latitude_e6: asked.number("latitude_e6"),
  longitude_e6: asked.number("longitude_e6"),
});

/** ROUND-5: the order of stops; those with no place on the map come last, in their own order. */
export function roundOrder(inputs: RoundInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["start", "van", "stops"]);
  const work = new Working(settings);
  const end = (name: "start" | "van"): Place | null =>
    asked.has(name) ? placeOf(new Asked(asked.inputs[name], NAMES, `${name}.`)) : null;
  const start = end("start");
  const van = end("van");
  const beginsAt = van ?? start;
  const placed: { stop: number; place: Place }[] = [];
  const unplaced: number[] = [];
  for (const [stop, part] of asked.parts("stops", MOST_STOPS, "stops").entries()) {
    const one = new Asked(part, NAMES, `stops[${stop}].`);
    if (NAMES.some((name) => one.has(name))) placed.push({ stop, place: placeOf(one) });
    else unplaced.push(stop);
  }
  work.figure("earth_radius_km");
  const ways = new Ways(
    beginsAt,
    start,
    placed.map(({ place }) => place),
  );
  const order = shortest(ways, placed.length);
  const total = ways.totalM(order);
  const last = order.at(-1) ?? null;
  work.step("Stops on the map", placed.length, "stops", 0);
  work.step("The whole way, as the crow flies", total / METRES, "km", 1);
  return work.done({
    order: [
      ...order.map((n, at) => ({
        stop: placed[n]?.stop as number,
        leg_m: at === 0 && beginsAt === null ? null : ways.legM(order[at - 1] ?? null, n),
      })),
      ...unplaced.map((stop) => ({ stop, leg_m: null })),
    ],
    unplaced: unplaced.length,
    back_m: last === null || start === null ? null : ways.legM(last, null),
    total_m: total,
  });
}
