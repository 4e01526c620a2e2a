// What a beer is given in the container, from its recipe and what was measured of its gyle. What is
// not known is named with where to enter it; it never counts as nought.

import { finingsConditions } from "../../domain/bench/finings-conditions.ts";
import { primings } from "../../domain/bench/primings.ts";
import { caskHops, finingsDose } from "../../domain/bench/rates.ts";
import type { SugarName } from "../../domain/bench/sugars.ts";
import type { CautionId } from "../../domain/cautions.ts";
import { DomainError } from "../../domain/errors.ts";
import { figure, type Settings, setting } from "../../domain/figures.ts";
import type { BeerFields, GyleFields } from "../../domain/records.ts";
import { halfUpWhole } from "../../domain/rounding.ts";
import type { Dose } from "../../domain/standing.ts";
import type { AnyWorked } from "../parts/working.ts";

export type Added = Dose["what"];

export interface Racked {
  beer: Partial<BeerFields>;
  gyle: Partial<GyleFields>;
  /** Containers filled alike, with how many of each. */
  containers: { volume_ml: number; count: number }[];
  /** The marked limit of the container, where it is one and has a mark. */
  limitBar?: number | null;
  settings: Settings;
}

export interface DoseLine {
  what: Added;
  label: string;
  unit: "mL" | "g";
  /** For one container of each row, and for all; null while something is missing. */
  each: number[] | null;
  total: number | null;
  /** How it goes in: "syrup 800 g/L", or why there is none. */
  note: string;
  /** What is not entered yet, and of what it is to be entered. */
  missing: { words: string[]; of: "beer" | "gyle" } | null;
  /** Isinglass after alginate: not at filling but some hours later. */
  later: boolean;
  worked: AnyWorked[];
}

type Half = Pick<DoseLine, "what" | "label" | "unit">;

const lacking = (half: Half, of: "beer" | "gyle", words: string[]): DoseLine => ({
  ...half,
  each: null,
  total: null,
  note: "not known yet",
  missing: { words, of },
  later: false,
  worked: [],
});

/** A rule's refusal: the figure is there and cannot be. */
const refusal = (half: Half, fault: unknown): DoseLine => {
  if (!(fault instanceof DomainError)) throw fault;
  const { field, low, high, unit } = fault.facts;
  const words = `${String(field).replaceAll("_", " ")} from ${low} to ${high} ${unit}`;
  return lacking(half, "gyle", [words]);
};

const e4 = (gravity: number | undefined): number => (gravity ?? 0) / 10_000;

const NONE_BECAUSE = {
  residual: "none: enough CO2",
  remaining_extract: "none: enough extract",
};

const primingsLine = (racked: Racked): DoseLine | null => {
  const { beer, gyle, containers, settings, limitBar = null } = racked;
  const syrup = beer.syrup_g_per_l ?? null;
  const half: Half = { what: "primings", label: "primings", unit: syrup === null ? "g" : "mL" };
  if (beer.priming_sugar === "none") return null;
  if (beer.priming_sugar === undefined && beer.target_co2_centivols === undefined) return null;
  const ofBeer = [
    beer.target_co2_centivols === undefined ? "CO2 wanted" : "",
    beer.priming_sugar === undefined ? "priming sugar" : "",
    beer.limit_gravity_e4 === undefined ? "attenuation limit" : "",
  ].filter(Boolean);
  if (ofBeer.length > 0) return lacking(half, "beer", ofBeer);
  const { measured_co2_centivols: co2, highest_temp_decidegc: highest } = gyle;
  const ofGyle = [
    gyle.present_gravity_e4 === undefined ? "gravity now" : "",
    co2 === undefined && highest === undefined ? "warmest temperature" : "",
  ].filter(Boolean);
  if (ofGyle.length > 0) return lacking(half, "gyle", ofGyle);
  try {
    const inputs = {
      target_vol: (beer.target_co2_centivols ?? 0) / 100,
      yield: beer.priming_yield ?? ("full" as const),
      sugar: beer.priming_sugar as SugarName,
      ...(co2 === undefined
        ? { highest_temp_c: (highest ?? 0) / 10 }
        : { measured_vol: co2 / 100 }),
      present_gravity: e4(gyle.present_gravity_e4),
      limit_gravity: e4(beer.limit_gravity_e4),
      syrup_g_per_l: syrup,
      cellar_temp_c: setting("cellar_temp_c", settings),
      limit_bar: limitBar,
      containers,
    };
    const worked = primings(inputs, settings);
    const { result } = worked;
    const grams = result.containers.map((row) => halfUpWhole(row.sugar_g));
    const because = result.no_sugar_because;
    const how = result.yield === "full" ? "in full" : "by Balling";
    return {
      ...half,
      each: syrup === null ? grams : result.containers.map((row) => row.syrup_ml ?? 0),
      total: syrup === null ? halfUpWhole(result.total_sugar_g) : (result.syrup?.needed_ml ?? 0),
      note: because
        ? NONE_BECAUSE[because]
        : `${syrup === null ? "dry" : `syrup ${syrup} g/L`}, ${how}`,
      missing: null,
      later: false,
      worked: [worked],
    };
  } catch (fault) {
    return refusal(half, fault);
  }
};

/** The beer against the windows for fining, as far as anything was measured. */
const conditions = ({ gyle, settings }: Racked): AnyWorked[] => {
  const { yeast_thousands_per_ml: yeast, ph_hundredths: ph, fining_temp_decidegc: temp } = gyle;
  if (yeast === undefined && ph === undefined && temp === undefined) return [];
  const inputs = {
    yeast_million_per_ml: yeast === undefined ? null : yeast / 1000,
    ph: ph === undefined ? null : ph / 100,
    fining_temp_c: temp === undefined ? null : temp / 10,
  };
  try {
    return [finingsConditions(inputs, settings)];
  } catch (fault) {
    if (fault instanceof DomainError) return []; // odd figures are told where they are entered
    throw fault;
  }
};

const finings = (racked: Racked, half: Half, rate: number, note: string): DoseLine => {
  try {
    const product = half.what === "isinglass" ? ("isinglass" as const) : ("auxiliary" as const);
    const { containers, settings } = racked;
    const worked = finingsDose({ product, rate, rate_unit: "ml_per_hl", containers }, settings);
    const each = worked.result.containers.map((row) => halfUpWhole(row.dose_ml));
    const total = worked.result.total_ml;
    return {
      ...half,
      each,
      total,
      note,
      missing: null,
      later: false,
      worked: [worked, ...conditions(racked)],
    };
  } catch (fault) {
    return refusal(half, fault);
  }
};

const auxiliaryLine = (racked: Racked): DoseLine | null => {
  const { auxiliary, auxiliary_ml_per_hl: rate } = racked.beer;
  if (auxiliary === undefined || auxiliary === "none") return null;
  const half: Half = { what: auxiliary, label: "auxiliary", unit: "mL" };
  if (rate === undefined) return lacking(half, "beer", ["the rate of auxiliary"]);
  const hours = figure("alginate_interval_h");
  const alginate = auxiliary === "auxiliary_alginate";
  return finings(racked, half, rate, alginate ? `first, ${hours} h before` : "silica");
};

/** Isinglass for these containers, whatever went in before. */
export const isinglassLine = (racked: Racked): DoseLine | null => {
  const { isinglass_ml_per_hl: rate = 0, vegan } = racked.beer;
  if (rate === 0) return null;
  const half: Half = { what: "isinglass", label: "isinglass", unit: "mL" };
  if (vegan) return { ...lacking(half, "beer", []), missing: null, note: "none: sold as vegan" };
  const temp = racked.gyle.fining_temp_decidegc;
  return finings(racked, half, rate, temp === undefined ? "" : `at ${temp / 10} °C`);
};

const hopsLine = ({ beer, containers, settings }: Racked): DoseLine | null => {
  const rate = beer.hops_g_per_hl ?? 0;
  if (rate === 0) return null;
  const half: Half = { what: "hops", label: "hops", unit: "g" };
  try {
    const worked = caskHops({ rate, rate_unit: "g_per_hl", containers }, settings);
    const each = worked.result.containers.map((row) => halfUpWhole(row.dose_g));
    const total = halfUpWhole(worked.result.total_g);
    return { ...half, each, total, note: "", missing: null, later: false, worked: [worked] };
  } catch (fault) {
    return refusal(half, fault);
  }
};

/** Every dose of the racking, in the order in which it goes in. */
export const doseLines = (racked: Racked): DoseLine[] => {
  const alginate = racked.beer.auxiliary === "auxiliary_alginate";
  const isinglass = isinglassLine(racked);
  const hours = figure("alginate_interval_h");
  const after =
    isinglass !== null && isinglass.each !== null && alginate
      ? { ...isinglass, later: true, note: `${hours} h later, in Fine` }
      : isinglass;
  const all = [primingsLine(racked), auxiliaryLine(racked), after, hopsLine(racked)];
  return all.flatMap((line) => (line === null ? [] : [line]));
};

/** Always true of what is worked out here, and so behind the tap only. */
const QUIET: readonly CautionId[] = [
  "residual_is_estimate",
  "sealed_pressure_is_estimate",
  "limit_not_known",
  "boil_priming_syrup",
  "hops_may_add_co2",
  "malt_extract_is_estimate",
];

/** What stands out: cautions that this very racking has earned. */
export const loudCautions = (lines: readonly DoseLine[]): CautionId[] => {
  const all = lines.flatMap((line) => line.worked.flatMap((worked) => worked.cautions));
  return [...new Set(all)].filter((id) => !QUIET.includes(id));
};
