/** GAUGE: the inside of a cask, and how much lies below a surface. Twin of cellarapp/domain/cellar/gauging.py. */
import { outOfRange } from "../errors.ts";
import { numberIn } from "../inputs.ts";
import type { Working } from "../working.ts";
import type { CellarAsked } from "./asked.ts";

export const MEASURES = ["bung_diameter_mm", "head_diameter_mm", "length_mm"] as const;
const MM3_PER_ML = 1000;
/** Of Simpson's rule: even, and so many that the last millilitre is right. */
const SLICES = 1000;

/** Diameters at bung and head, and the length from head to head, mm inside. */
export interface Inside {
  bungMm: number;
  headMm: number;
  lengthMm: number;
}

/** GAUGE-1: pi L (2 R² + r²) / 3. */
export const fullMl = ({ bungMm, headMm, lengthMm }: Inside): number =>
  (Math.PI * lengthMm * (2 * (bungMm / 2) ** 2 + (headMm / 2) ** 2)) / 3 / MM3_PER_ML;

/** GAUGE-2: beer in a cask that lies level, from the wet dip at the bung. */
export function lyingMl(inside: Inside, wetMm: number): number {
  if (wetMm > inside.bungMm / 2) return fullMl(inside) - belowMl(inside, inside.bungMm - wetMm);
  return belowMl(inside, wetMm);
}

/** GAUGE-3: beer in a cask that stands on its head, from the wet dip along its length. */
export function standingMl({ bungMm, headMm, lengthMm }: Inside, wetMm: number): number {
  const half = lengthMm / 2;
  const big = (bungMm / 2) ** 2;
  const small = (headMm / 2) ** 2;
  const cubes = ((wetMm - half) ** 3 + half ** 3) / (3 * half ** 2);
  return (Math.PI * (big * wetMm - (big - small) * cubes)) / MM3_PER_ML;
}

/** Circular segments, summed along the cask; the surface lies at or below its axis. */
function belowMl({ bungMm, headMm, lengthMm }: Inside, wetMm: number): number {
  const big = (bungMm / 2) ** 2;
  const falls = big - (headMm / 2) ** 2;
  const toAxis = bungMm / 2 - wetMm;
  const share = falls > 0 ? Math.min(1, Math.sqrt((big - toAxis ** 2) / falls)) : 1;
  let total = 0;
  for (let n = 0; n <= SLICES; n += 1) {
    const turn = ((Math.PI / 2) * n) / SLICES;
    const square = Math.max(big - falls * (share * Math.sin(turn)) ** 2, toAxis ** 2);
    const weight = n === 0 || n === SLICES ? 1 : n % 2 === 1 ? 4 : 2;
    total += weight * segment(square, toAxis) * Math.cos(turn);
  }
  return (2 * (lengthMm / 2) * share * total * (Math.PI / 2)) / SLICES / 3 / MM3_PER_ML;
}

function segment(square: number, toAxis: number): number {
  const angle = Math.acos(Math.min(1, toAxis / Math.sqrt(square)));
  return square * angle - toAxis * Math.sqrt(Math.max(0, square - toAxis ** 2));
}

/** A cask of the same shape that holds so many times as much. */
function scaled(inside: Inside, volumeRatio: number): Inside {
  const grown = volumeRatio ** (1 / 3);
  return {
    bungMm: inside.bungMm * grown,
    headMm: inside.headMm * grown,
    lengthMm: inside.lengthMm * grown,
  };
}

/** The cask's inside, or the model of its size, and what its contents are scaled by. */
export function askedInside(work: Working, asked: CellarAsked): { inside: Inside; scale: number } {
  const holdsMl = asked.maybeNumber("holds_ml");
  if (holdsMl !== null && !MEASURES.some((name) => asked.has(name))) {
    work.caution("model_cask_used");
    const model = work.figure("model_cask_mm");
    const { bung_diameter_mm: bungMm, head_diameter_mm: headMm, length_mm: lengthMm } = model;
    const inside = scaled({ bungMm, headMm, lengthMm }, holdsMl / model.holds_ml);
    return { inside, scale: holdsMl / fullMl(inside) };
  }
  const bungMm = asked.number("bung_diameter_mm");
  const why = "A cask is widest at its bung.";
  const given = asked.number("head_diameter_mm");
  const headMm = numberIn("head_diameter_mm", given, null, bungMm, "mm", why);
  const inside = { bungMm, headMm, lengthMm: asked.number("length_mm") };
  if (holdsMl === null) return { inside, scale: 1 };
  const full = fullMl(inside);
  const off = work.setting("measures_off_permille") / 1000;
  if (!(full * (1 - off) <= holdsMl && holdsMl <= full * (1 + off))) {
    throw outOfRange({
      field: "holds_ml",
      given: holdsMl,
      low: Math.ceil(full * (1 - off)),
      high: Math.floor(full * (1 + off)),
      unit: "mL",
      why: "The inside measures give other contents: one of them is mistaken.",
    });
  }
  return { inside, scale: holdsMl / full };
}
