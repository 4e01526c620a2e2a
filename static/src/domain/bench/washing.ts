/** Solutions for washing, from the product's own sheet. Twin of cellarapp/domain/bench/washing.py. */
import type { Settings } from "../figures.ts";
import { Asked, numberIn } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";

const SHEET_FIELDS = ["strength_pct_w_w", "density_g_per_ml", "contact_min", "rinse"];
export const OF_WHAT = ["product_v_v", "naoh_w_v"] as const;
const OF_WHAT_WHY = "2 % of what: of the product by volume, or of caustic soda by weight.";
export const METALS = ["stainless", "aluminium", "plastic", "wood"] as const;

/** What the product's own sheet says; none of it is assumed. */
export interface SheetInputs {
  strength_pct_w_w: number;
  density_g_per_ml: number;
  contact_min: number;
  rinse: boolean;
}

/** Active substance in a millilitre of the product, from its sheet. */
function activeMgPerMl(work: Working, asked: Asked): number {
  const strength = asked.number("strength_pct_w_w");
  const density = asked.number("density_g_per_ml");
  const says = "Active in the product = 10 w d, w in % by weight, d its density";
  return work.step(says, 10 * strength * density, "mg/mL", 2);
}

/** Product and water for the batch, which is made up to its volume; contact as on the sheet. */
function recipe(work: Working, asked: Asked, asRate: number) {
  const why = "More than the solution itself: the product is too weak for that.";
  const mlPerL = numberIn("product", asRate, 0, 1000, "mL/L", why);
  work.step("Product in a litre = wanted / active in the product", mlPerL, "mL/L", 3);
  const batchMl = asked.number("solution_ml");
  const productMl = work.step("Product = mL/L x litres", (mlPerL * batchMl) / 1000, "mL", 1);
  work.caution("product_sheet_first");
  work.caution("chemical_into_water");
  return {
    product_ml_per_l: halfUp(mlPerL, 2),
    product_ml: halfUp(productMl, 1),
    water_ml: halfUp(batchMl - productMl, 1),
    contact_min: halfUp(asked.number("contact_min"), 1),
    rinse: asked.flag("rinse", "Whether the product's sheet asks for a rinse."),
  };
}

/** WASH-1: peracetic acid for a batch of so many mg/L (ppm). */
export function peraceticDilution(
  inputs: SheetInputs & { target_mg_per_l: number; solution_ml: number; solution_temp_c: number },
  settings: Settings | null = null,
) {
  const fields = ["target_mg_per_l", "solution_ml", "solution_temp_c", ...SHEET_FIELDS];
  const asked = new Asked(inputs, fields);
  const work = new Working(settings);
  const target = asked.number("target_mg_per_l");
  const active = activeMgPerMl(work, asked);
  if (asked.number("solution_temp_c") > work.figure("paa_works_up_to_c")) {
    work.caution("peracetic_too_warm");
  }
  const result = recipe(work, asked, target / active);
  work.caution("peracetic_needs_clean_metal");
  work.caution("peracetic_hazards");
  const onePercent = work.step("1 % of the product by volume would be", active * 10, "mg/L", 0);
  return work.done({ ...result, one_percent_v_v_mg_per_l: halfUp(onePercent, 0) });
}

export interface CausticInputs extends SheetInputs {
  target_pct: number;
  of_what: (typeof OF_WHAT)[number];
  solution_ml: number;
  metal: (typeof METALS)[number];
}

/** WASH-2: caustic for a batch, with its % of the product and of caustic soda both said. */
export function causticDilution(inputs: CausticInputs, settings: Settings | null = null) {
  const fields = ["target_pct", "of_what", "solution_ml", "metal", ...SHEET_FIELDS];
  const asked = new Asked(inputs, fields);
  const work = new Working(settings);
  const target = asked.number("target_pct");
  const ofWhat = asked.choice("of_what", OF_WHAT, OF_WHAT_WHY);
  const metal = asked.choice("metal", METALS, "What the containers are made of.");
  const active = activeMgPerMl(work, asked);
  const mlPerL = ofWhat === "product_v_v" ? target * 10 : (target * 10_000) / active;
  const result = recipe(work, asked, mlPerL);
  const says = "Caustic soda = mL/L x active / 1000";
  const grams = work.step(says, (mlPerL * active) / 1000, "g/L", 2);
  const usual = work.figure("caustic_wash_naoh_pct");
  const percent = halfUp(grams / 10, 6);
  if (percent < usual.low || percent > usual.high) work.caution("caustic_strength_unusual");
  if (metal === "aluminium") work.caution("no_caustic_on_aluminium");
  work.caution("caustic_and_co2");
  work.caution("caustic_hazards");
  return work.done({
    ...result,
    product_pct_v_v: halfUp(mlPerL / 10, 3),
    naoh_g_per_l: halfUp(grams, 2),
    naoh_pct_w_v: halfUp(grams / 10, 3),
    allowed: metal !== "aluminium",
  });
}
