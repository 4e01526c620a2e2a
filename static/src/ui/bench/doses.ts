// What a beer is given in the container, from its recipe and what was measured of its gyle. What is
// not known is named with where to enter it; it never counts as nought.

import { finingsConditions } from "../../domain/bench/finings-conditions.ts";
import { type Finings, finingsOrder } from "../../domain/bench/finings-order.ts";
import { caskHops, finingsDose } from "../../domain/bench/rates.ts";
import type { CautionId } from "../../domain/cautions.ts";
import { DomainError } from "../../domain/errors.ts";
import { figure } from "../../domain/figures.ts";
import type { AnyWorked } from "../parts/working.ts";
import { carbonated } from "./carbonating.ts";
import {
  type DoseLine,
  fillings,
  type Half,
  inWhole,
  lacking,
  type Racked,
  refusal,
  weighedWords,
} from "./dose-line.ts";
import { primingsLine } from "./primings-line.ts";
import { sulphiteOf } from "./sulphite.ts";
import { otherLot } from "./trial/lots-tried.ts";

export type { Added, DoseLine, Racked } from "./dose-line.ts";

/** The beer against the windows for fining, as far as anything was measured. */
const conditions = ({ gyle, usualPh = null, settings }: Racked): AnyWorked[] => {
  const { yeast_thousands_per_ml: yeast, ph_hundredths: ph, fining_temp_decidegc: temp } = gyle;
  if (yeast === undefined && ph === undefined && temp === undefined) return [];
  const inputs = {
    yeast_million_per_ml: yeast === undefined ? null : yeast / 1000,
    ph: ph === undefined ? null : ph / 100,
    fining_temp_c: temp === undefined ? null : temp / 10,
    brand_ph: ph === undefined ? null : usualPh,
  };
  try {
    return [finingsConditions(inputs, settings)];
  } catch (fault) {
    if (fault instanceof DomainError) return []; // odd figures are told where they are entered
    throw fault;
  }
};

/** Of a beer that is given both: which goes first, and never from one vessel. */
const order = ({ beer }: Racked, product: Finings): AnyWorked[] => {
  const { auxiliary = "none", isinglass_ml_per_hl: isinglass = 0, vegan = false } = beer;
  const both = auxiliary !== "none" && isinglass > 0 && !vegan;
  return both ? [finingsOrder({ product, vegan, earlier: [] })] : [];
};

const finings = (racked: Racked, half: Half, rate: number, note: string): DoseLine => {
  try {
    const what = half.what as Finings;
    const product = what === "isinglass" ? ("isinglass" as const) : ("auxiliary" as const);
    const { sizes, settings } = racked;
    const inputs = { product, rate, rate_unit: "ml_per_hl" as const, containers: fillings(sizes) };
    const worked = finingsDose(inputs, settings);
    const sulphite = sulphiteOf(racked);
    const other = otherLot(racked, what);
    return {
      ...half,
      ...inWhole(
        sizes,
        worked.result.containers.map((row) => row.dose_ml),
      ),
      note,
      missing: null,
      later: false,
      worked: [worked, ...order(racked, what), ...conditions(racked), ...sulphite.worked],
      remarks: [
        ...(other === "" ? [] : [{ says: other, look: true }]),
        ...sulphite.says.map((says) => ({ says, look: false })),
      ],
    };
  } catch (fault) {
    return refusal(half, fault);
  }
};

const auxiliaryLine = (racked: Racked): DoseLine | null => {
  const { auxiliary, auxiliary_ml_per_hl: rate } = racked.beer;
  if (auxiliary === undefined || auxiliary === "none") return null;
  const half: Half = { what: auxiliary, label: "auxiliary", unit: "mL", sizes: racked.sizes };
  if (rate === undefined) return lacking(half, "beer", ["the rate of auxiliary"]);
  const hours = figure("alginate_interval_h");
  const alginate = auxiliary === "auxiliary_alginate";
  return finings(racked, half, rate, alginate ? `first, ${hours} h before` : "silica");
};

/** Isinglass for these containers, whatever went in before. */
export const isinglassLine = (racked: Racked): DoseLine | null => {
  const { isinglass_ml_per_hl: rate = 0, vegan } = racked.beer;
  if (rate === 0) return null;
  const half: Half = { what: "isinglass", label: "isinglass", unit: "mL", sizes: racked.sizes };
  if (vegan) return { ...lacking(half, "beer", []), missing: null, note: "none: sold as vegan" };
  const temp = racked.gyle.fining_temp_decidegc;
  return finings(racked, half, rate, temp === undefined ? "" : `at ${temp / 10} °C`);
};

const hopsLine = ({ beer, sizes, settings }: Racked): DoseLine | null => {
  const rate = beer.hops_g_per_hl ?? 0;
  if (rate === 0) return null;
  const half: Half = { what: "hops", label: "hops", unit: "g", sizes };
  try {
    const inputs = { rate, rate_unit: "g_per_hl" as const, containers: fillings(sizes) };
    const worked = caskHops(inputs, settings);
    const { containers, total_g } = worked.result;
    const doses = inWhole(
      sizes,
      containers.map((row) => row.dose_g),
    );
    const remarks = weighedWords(doses.total, total_g);
    return {
      ...half,
      ...doses,
      note: "",
      missing: null,
      later: false,
      worked: [worked],
      remarks,
    };
  } catch (fault) {
    return refusal(half, fault);
  }
};

/** Every dose of the racking, in the order in which it goes in; none into a keg that is carbonated. */
export const doseLines = (all: Racked): DoseLine[] => {
  const racked = { ...all, sizes: all.sizes.filter((size) => !carbonated(all.beer, size)) };
  if (racked.sizes.length === 0) return [];
  const alginate = racked.beer.auxiliary === "auxiliary_alginate";
  const isinglass = isinglassLine(racked);
  const hours = figure("alginate_interval_h");
  const after =
    isinglass !== null && isinglass.each !== null && alginate
      ? { ...isinglass, later: true, note: `${hours} h later, in Fine` }
      : isinglass;
  const lines = [primingsLine(racked), auxiliaryLine(racked), after, hopsLine(racked)];
  return lines.flatMap((line) => (line === null ? [] : [line]));
};

/** Always true of what is worked out here, and so behind the tap only. */
const QUIET: readonly CautionId[] = [
  "residual_is_estimate",
  "sealed_pressure_is_estimate",
  "limit_not_known",
  "boil_priming_syrup",
  "hops_may_add_co2",
  "malt_extract_is_estimate",
  "never_fine_fermenting",
  "two_vessels",
  "silica_by_trial",
  "beer_sulphite_not_known",
];

/** What stands out: cautions that this very racking has earned. */
export const loudCautions = (lines: readonly { worked: readonly AnyWorked[] }[]): CautionId[] => {
  const all = lines.flatMap((line) => line.worked.flatMap((worked) => worked.cautions));
  return [...new Set(all)].filter((id) => !QUIET.includes(id));
};
