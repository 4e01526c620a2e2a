/** The beer at fining, and sulphite carried in. Twin of cellarapp/domain/bench/finings_conditions.py. */
import type { CautionId } from "../cautions.ts";
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import type { FiningsProduct } from "./rates.ts";

const CONDITION_CAUTIONS = {
  yeast_million_per_ml: { below: "conditioning_at_risk", above: "fining_at_risk" },
  ph: { below: "ph_outside", above: "ph_outside" },
  temp_c: { below: "fining_cold", above: "fining_warm" },
} as const satisfies Record<string, Record<"below" | "above", CautionId>>;
const FIELDS = ["yeast_million_per_ml", "ph", "fining_temp_c"] as const;
const MOST_ADDITIONS = 20;

export type Condition = keyof typeof CONDITION_CAUTIONS;
export type Verdict = "inside" | "below" | "above";

/** What was measured of the beer; `brand_ph` is what this beer usually has. */
export interface FiningsConditionsInputs {
  yeast_million_per_ml?: number | null;
  ph?: number | null;
  fining_temp_c?: number | null;
  brand_ph?: number | null;
}

/** Inside, below or above the window, either end of which is inside. */
function verdict(work: Working, asked: Asked, name: Condition, field: (typeof FIELDS)[number]) {
  const window = work.figure("fining_windows")[name];
  if (!asked.has(field)) return null;
  const value = asked.number(field);
  let side: Verdict = "inside";
  if (value < window.low) side = "below";
  else if (value > window.high) side = "above";
  if (side !== "inside") work.caution(CONDITION_CAUTIONS[name][side]);
  return side;
}

function likeBrand(work: Working, asked: Asked): "like" | "unlike" | null {
  if (!asked.has("brand_ph")) return null;
  const off = asked.number("ph") - asked.number("brand_ph");
  work.step("pH away from the beer's own", off, "pH", 2);
  const unlike = halfUp(Math.abs(off), 6) > work.figure("brand_ph_spread");
  if (unlike) work.caution("ph_unlike_brand");
  return unlike ? "unlike" : "like";
}

/** FINE-4: each measured value against its window; null for what was not measured. */
export function finingsConditions(
  inputs: FiningsConditionsInputs,
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, [...FIELDS, "brand_ph"]);
  const work = new Working(settings);
  if (!FIELDS.some((field) => asked.has(field))) asked.number("yeast_million_per_ml");
  return work.done({
    yeast_million_per_ml: verdict(work, asked, "yeast_million_per_ml", "yeast_million_per_ml"),
    ph: verdict(work, asked, "ph", "ph"),
    temp_c: verdict(work, asked, "temp_c", "fining_temp_c"),
    brand_ph: likeBrand(work, asked),
  });
}

/** The beer's own where it was measured; finings by rate, their SO2 from their sheet, else the upper published value. */
export interface SulphiteInputs {
  beer_so2_mg_per_l?: number | null;
  additions: { product: FiningsProduct; ml_per_l: number; so2_mg_per_l?: number | null }[];
}

/** FINE-5: sulphite that finings carry in, on top of the beer's own, against declaration. */
export function sulphite(inputs: SulphiteInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["beer_so2_mg_per_l", "additions"]);
  const work = new Working(settings);
  const own = asked.has("beer_so2_mg_per_l") ? asked.number("beer_so2_mg_per_l") : null;
  const published = work.figure("finings_so2_mg_per_l");
  const products = Object.keys(published) as FiningsProduct[];
  let carried = 0;
  asked.parts("additions", MOST_ADDITIONS, "additions").forEach((row, index) => {
    const names = ["product", "ml_per_l", "so2_mg_per_l"];
    const part = new Asked(row, names, `additions[${index}].`);
    const product = part.choice("product", products, "Isinglass, or auxiliary finings.");
    const mlPerL = part.number("ml_per_l");
    const strength = part.has("so2_mg_per_l") ? part.number("so2_mg_per_l") : published[product];
    carried += (mlPerL * strength) / 1000;
  });
  work.step("Carried in = sum of rate x SO2 in the finings / 1000", carried, "mg/L", 2);
  if (own === null) work.caution("beer_sulphite_not_known");
  else work.step("Total = the beer's own + carried in", own + carried, "mg/L", 2);
  const total = (own ?? 0) + carried;
  const declare = halfUp(total, 6) > work.figure("sulphite_declared_above_mg_per_l");
  if (declare) work.caution("declare_sulphites");
  if (halfUp(total, 6) >= work.figure("sulphite_beer_most_mg_per_l")) {
    work.caution("sulphite_high");
  }
  return work.done({
    carried_in_mg_per_l: halfUp(carried, 2),
    total_mg_per_l: own === null ? null : halfUp(total, 2),
    declare,
  });
}
