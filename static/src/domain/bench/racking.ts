/** Which containers to fill from a vessel. Twin of cellarapp/domain/bench/racking.py. */
import { outOfRange } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { Asked, numberIn } from "../inputs.ts";
import { Working } from "../working.ts";

const MOST_SIZES = 40;
const MOST_CONTAINERS = 200;

/** Containers of one size that are clean and here, and how many of them must be filled. */
export interface Size {
  capacity_ml: number;
  available: number;
  wished: number;
}

export interface RackingPlanInputs {
  vessel_ml: number;
  loss_ml: number;
  sizes: Size[];
}

/** How many of each size the wishes take, in the order in which they are written. */
function grantedWishes(sizes: readonly Size[], usableMl: number): number[] {
  let leftMl = usableMl;
  return sizes.map((size) => {
    const count = Math.min(size.wished, size.available, Math.floor(leftMl / size.capacity_ml));
    leftMl -= count * size.capacity_ml;
    return count;
  });
}

/** The number of the highest bit that is set. */
function highestBit(bits: bigint): number {
  const hex = bits.toString(16);
  return (hex.length - 1) * 4 + 31 - Math.clz32(Number.parseInt(hex.charAt(0), 16));
}

/**
 * How many of each to fill so that most goes into them, exactly. All the sums that can be reached
 * stand as bits of one whole number: bit n is set when n mL can be filled. Of several ways to the
 * same sum the one with most of the largest size is taken, then of the next.
 */
export function fullest(
  sizes: readonly { capacityMl: number; available: number }[],
  roomMl: number,
): number[] {
  const ascending = sizes
    .map((size, index) => ({ ...size, index }))
    .sort((one, other) => one.capacityMl - other.capacityMl);
  let reached = 1n;
  const layers = ascending.map((size) => {
    const smaller = reached;
    for (let left = size.available, chunk = 1; left > 0; chunk *= 2) {
      const taken = Math.min(chunk, left);
      const shifted = reached << BigInt(taken * size.capacityMl);
      reached = BigInt.asUintN(roomMl + 1, reached | shifted);
      left -= taken;
    }
    return { ...size, smaller };
  });
  let sumMl = highestBit(reached);
  const counts = sizes.map(() => 0);
  for (const { capacityMl, available, index, smaller } of layers.reverse()) {
    let count = Math.min(available, Math.floor(sumMl / capacityMl));
    while (((smaller >> BigInt(sumMl - count * capacityMl)) & 1n) === 0n) count -= 1;
    counts[index] = count;
    sumMl -= count * capacityMl;
  }
  return counts;
}

/** The rows asked about; no more than 200 containers in all. */
function askedSizes(asked: Asked): Size[] {
  const sizes = asked.parts("sizes", MOST_SIZES, "sizes").map((row, index) => {
    const names = ["capacity_ml", "available", "wished"];
    const part = new Asked(row, names, `sizes[${index}].`);
    return {
      capacity_ml: part.number("capacity_ml"),
      available: part.number("available"),
      wished: part.number("wished"),
    };
  });
  const total = sizes.reduce((sum, size) => sum + size.available, 0);
  if (total > MOST_CONTAINERS) {
    const facts = { field: "sizes", given: total, low: 0, high: MOST_CONTAINERS };
    const why = "So many are planned at once.";
    throw outOfRange({ ...facts, unit: "whole containers", why });
  }
  return sizes;
}

const volumeMl = (sizes: readonly Size[], counts: readonly number[]): number =>
  sizes.reduce((sum, size, index) => sum + size.capacity_ml * (counts[index] ?? 0), 0);

/** The container that what is left comes nearest to filling, and the headspace it would have. */
function shortest(sizes: readonly Size[], fills: readonly number[], leftMl: number) {
  const open = sizes.filter((size, index) => (fills[index] ?? 0) < size.available);
  if (leftMl === 0 || open.length === 0) return null;
  const capacityMl = Math.min(...open.map((size) => size.capacity_ml));
  return { capacity_ml: capacityMl, volume_ml: leftMl, headspace_ml: capacityMl - leftMl };
}

/** Wishes not met; a container that what is left would all but fill; beer and no container. */
function warnOf(
  work: Working,
  unmet: readonly number[],
  leftMl: number,
  short: { capacity_ml: number } | null,
): void {
  if (unmet.some((missing) => missing > 0)) work.caution("wishes_unmet");
  if (short === null) {
    if (leftMl > 0) work.caution("no_container_left");
  } else if (leftMl * 100 >= work.setting("short_fill_worth_pct") * short.capacity_ml) {
    work.caution("short_of_a_container");
  }
}

/** RACK-1: how many of each size to fill: wishes first, then so that least is left. */
export function rackingPlan(inputs: RackingPlanInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["vessel_ml", "loss_ml", "sizes"]);
  const work = new Working(settings);
  const vesselMl = asked.number("vessel_ml");
  const why = "No more is left behind than is there.";
  const lossMl = numberIn("loss_ml", asked.number("loss_ml"), 0, vesselMl, "whole mL", why);
  const sizes = askedSizes(asked);
  const usableMl = work.step("To rack = vessel - left behind", vesselMl - lossMl, "mL", 0);
  const granted = grantedWishes(sizes, usableMl);
  const wishedMl = work.step("Wishes take", volumeMl(sizes, granted), "mL", 0);
  const spare = sizes.map((size, index) => ({
    capacityMl: size.capacity_ml,
    available: size.available - (granted[index] ?? 0),
  }));
  const more = fullest(spare, usableMl - wishedMl);
  const fills = granted.map((taken, index) => taken + (more[index] ?? 0));
  const rackedMl = volumeMl(sizes, fills);
  const leftMl = work.step("Left over = to rack - racked", usableMl - rackedMl, "mL", 0);
  const short = shortest(sizes, fills, leftMl);
  const unmet = sizes.map((size, index) => size.wished - (granted[index] ?? 0));
  warnOf(work, unmet, leftMl, short);
  return work.done({
    usable_ml: usableMl,
    racked_ml: rackedMl,
    left_ml: leftMl,
    containers: fills.reduce((sum, fill) => sum + fill, 0),
    sizes: sizes.map((size, index) => ({
      capacity_ml: size.capacity_ml,
      fill: fills[index] ?? 0,
      unmet: unmet[index] ?? 0,
    })),
    short,
  });
}
