// The sugar that a beer is primed with: which, how much of it, and what it comes to when closed.

import { sealedPressure } from "../../domain/bench/pressure.ts";
import { type PrimingsInputs, primings } from "../../domain/bench/primings.ts";
import { askedSugar, co2PerGram, SUGAR_FIELDS, type SugarName } from "../../domain/bench/sugars.ts";
import { figure, setting } from "../../domain/figures.ts";
import { Asked, RANGES } from "../../domain/inputs.ts";
import type { BeerFields } from "../../domain/record-fields.ts";
import { Working } from "../../domain/working.ts";
import {
  absent,
  type DoseLine,
  fillings,
  type Half,
  inWhole,
  lacking,
  type Racked,
  refusal,
  weighedWords,
} from "./dose-line.ts";
import { limitBarOf } from "./sizes.ts";

const NONE_BECAUSE = {
  residual: "none: enough CO2",
  remaining_extract: "none: enough extract",
};

/** Sugars that are bought as syrup, which need what their sheet says of them. */
const BOUGHT_AS_SYRUP = ["invert_syrup", "glucose_syrup"];

export const isSyrup = ({ syrup_gravity_e4, syrup_g_per_l }: Partial<BeerFields>): boolean =>
  syrup_gravity_e4 !== undefined || syrup_g_per_l !== undefined;

const ofBeer = (beer: Racked["beer"]): string[] => {
  const sugar = beer.priming_sugar ?? "";
  return [
    ...absent({
      "CO2 wanted": beer.target_co2_centivols,
      "priming sugar": beer.priming_sugar,
      "attenuation limit": beer.limit_gravity_e4,
    }),
    ...(BOUGHT_AS_SYRUP.includes(sugar) ? absent({ solids: beer.sugar_solids_tenths }) : []),
    ...(sugar === "glucose_syrup"
      ? absent({ "fermentable part": beer.sugar_fermentable_tenths })
      : []),
  ];
};

const ofGyle = (gyle: Racked["gyle"]): string[] =>
  absent({
    "gravity now": gyle.present_gravity_e4,
    "warmest temperature": gyle.measured_co2_centivols ?? gyle.highest_temp_decidegc,
  });

/** The sugar, and what its own sheet says of it. */
export const sugarOf = (beer: Racked["beer"]) => {
  const sugar = beer.priming_sugar as SugarName;
  const solids = beer.sugar_solids_tenths ?? 0;
  const fermentable = beer.sugar_fermentable_tenths ?? 0;
  return {
    sugar,
    ...(BOUGHT_AS_SYRUP.includes(sugar) ? { solids_pct: solids / 10 } : {}),
    ...(sugar === "glucose_syrup" ? { fermentable_pct: fermentable / 10 } : {}),
  };
};

/** The syrup's strength; neither for sugar that is weighed into each container. */
export const syrupOf = ({ syrup_gravity_e4, syrup_g_per_l }: Racked["beer"]) =>
  syrup_gravity_e4 !== undefined
    ? { syrup_gravity: syrup_gravity_e4 / 10_000 }
    : syrup_g_per_l !== undefined
      ? { syrup_g_per_l }
      : {};

/** The lowest limit that is known of them. */
const limitOf = ({ sizes }: Racked): number | null => {
  const limits = sizes.flatMap((size) => limitBarOf(size) ?? []);
  return limits.length === 0 ? null : Math.min(...limits);
};

const asked = (racked: Racked): PrimingsInputs => {
  const { beer, gyle, sizes, settings } = racked;
  const { measured_co2_centivols: co2, highest_temp_decidegc: highest = 0 } = gyle;
  return {
    target_vol: (beer.target_co2_centivols ?? 0) / 100,
    yield: beer.priming_yield ?? "full",
    ...sugarOf(beer),
    ...syrupOf(beer),
    ...(co2 === undefined ? { highest_temp_c: highest / 10 } : { measured_vol: co2 / 100 }),
    present_gravity: (gyle.present_gravity_e4 ?? 0) / 10_000,
    limit_gravity: (beer.limit_gravity_e4 ?? 0) / 10_000,
    cellar_temp_c: setting("cellar_temp_c", settings),
    limit_bar: limitOf(racked),
    containers: fillings(sizes),
  };
};

type Primed = ReturnType<typeof primings>["result"];

/** By the rule for a sealed container, with another amount of sugar than the one worked out. */
const closedWith = (racked: Racked, result: Primed) => {
  const { beer, settings } = racked;
  const sugar = askedSugar(new Working(settings), new Asked(sugarOf(beer), [...SUGAR_FIELDS]));
  const co2 = co2PerGram(new Working(settings), sugar, beer.priming_yield ?? "full");
  const grams = result.syrup === null ? 1 : result.syrup.sugar_g_per_l / 1000;
  const volPerUnit = (grams * co2) / figure("co2_g_per_l_per_vol");
  const before = result.residual_vol + result.from_extract_vol;
  const { cellar_temp_c, limit_bar = null } = asked(racked);
  return (perL: number) => {
    // Beyond the rule's range there is danger all the same: its end is told.
    const total_vol = Math.min(RANGES.total_vol.high, before + perL * volPerUnit);
    return sealedPressure({ total_vol, cellar_temp_c, limit_bar }, settings);
  };
};

/** "syrup 800 g/L, in full" */
const noteOf = ({ beer }: Racked, result: Primed): string => {
  if (result.no_sugar_because) return NONE_BECAUSE[result.no_sugar_because];
  const { syrup_gravity_e4: gravity, syrup_g_per_l, priming_sugar = "" } = beer;
  const dry = BOUGHT_AS_SYRUP.includes(priming_sugar) ? "as bought" : "dry";
  const form =
    gravity !== undefined
      ? `syrup ${(gravity / 10_000).toFixed(3)}`
      : syrup_g_per_l !== undefined
        ? `syrup ${syrup_g_per_l} g/L`
        : dry;
  const yields = result.yield === "full" ? "in full" : "by Balling";
  return `${form}, ${yields}${priming_sugar === "malt_extract" ? ", an estimate" : ""}`;
};

/** Null for a beer that is not primed. */
export const primingsLine = (racked: Racked): DoseLine | null => {
  const { beer, gyle, sizes, settings } = racked;
  const syrup = isSyrup(beer);
  const half: Half = { what: "primings", label: "primings", unit: syrup ? "mL" : "g", sizes };
  if (beer.priming_sugar === "none") return null;
  if (beer.priming_sugar === undefined && beer.target_co2_centivols === undefined) return null;
  if (ofBeer(beer).length > 0) return lacking(half, "beer", ofBeer(beer));
  if (ofGyle(gyle).length > 0) return lacking(half, "gyle", ofGyle(gyle));
  try {
    const worked = primings(asked(racked), settings);
    const { result } = worked;
    const doses = inWhole(
      sizes,
      result.containers.map((row) => row.syrup_ml ?? row.sugar_g),
    );
    return {
      ...half,
      ...doses,
      note: noteOf(racked, result),
      missing: null,
      later: false,
      worked: [worked],
      remarks: syrup ? [] : weighedWords(doses.total, result.total_sugar_g),
      closed: closedWith(racked, result),
    };
  } catch (fault) {
    return refusal(half, fault);
  }
};
