/** LABEL: what a label says of strength and allergens. Twin of cellarapp/domain/cellar/label.py. */
import type { Settings } from "../figures.ts";
import { choiceOf } from "../inputs.ts";
import { halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";

const CEREAL_WHY = "Each cereal containing gluten is named.";
const MOST_CEREALS = 10;
const FINED_WHY = "Whether isinglass was used.";
const MILK_WHY = "Whether milk or lactose is in it.";

export interface LabelInputs {
  abv_tenths: number;
  cereals: readonly string[];
  milk: boolean;
  isinglass: boolean;
  sulphites_mg_per_l?: number | null;
}

export interface LabelStrengthInputs {
  label_abv_tenths: number;
  measured_abv: number;
}

/** LABEL-1: at most one decimal, and the sign the law gives. */
export const strengthWords = (abvTenths: number): string =>
  `Alc. ${Math.floor(abvTenths / 10)}.${abvTenths % 10} % vol`;

/** The cereals that were given, each once, in the order of the list of the law. */
function cerealsOf(work: Working, asked: CellarAsked): string[] {
  const known = work.figure("label_cereals");
  const given = asked
    .parts("cereals", MOST_CEREALS, "cereals")
    .map((cereal, n) => choiceOf(`cereals[${n}]`, cereal, known, CEREAL_WHY));
  return known.filter((cereal) => given.includes(cereal));
}

/** LABEL-2: above 10 mg/L; exactly 10 is not. Not given, a caution says so. */
function sulphitesDeclared(work: Working, asked: CellarAsked): boolean {
  const limit = work.figure("sulphite_declared_above_mg_per_l");
  if (!asked.has("sulphites_mg_per_l")) {
    work.caution("sulphites_not_known");
    return false;
  }
  const found = asked.number("sulphites_mg_per_l");
  work.step("Sulphites, declared above the limit", found, "mg/L", 1);
  return found > limit;
}

/** LABEL-3: the words for strength and allergens; isinglass is exempt, and still not vegan. */
export function label(inputs: LabelInputs, settings: Settings | null = null) {
  const fields = ["abv_tenths", "cereals", "milk", "isinglass", "sulphites_mg_per_l"];
  const asked = new CellarAsked(inputs, fields);
  const work = new Working(settings);
  const strength = asked.number("abv_tenths");
  const needed = strength > work.figure("strength_labelled_above_abv_tenths");
  work.step("Strength", strength / 10, "% vol", 1);
  const contains = cerealsOf(work, asked).map((cereal) => `${cereal} (gluten)`);
  const milk = asked.flag("milk", MILK_WHY);
  const isinglass = asked.flag("isinglass", FINED_WHY);
  if (milk) contains.push("milk");
  if (sulphitesDeclared(work, asked)) contains.push("sulphites");
  if (isinglass) work.caution("fined_is_not_vegan");
  work.caution("check_food_law");
  return work.done({
    strength_words: strengthWords(strength),
    strength_needed: needed,
    contains,
    contains_words: contains.length > 0 ? `Contains ${contains.join(", ")}` : "",
    may_be_vegan: !milk && !isinglass,
    on_the_cask: work.figure("cask_label_particulars"),
  });
}

/** LABEL-4: whether a label's strength is near enough to the true one; the stricter row counts. */
export function labelStrength(inputs: LabelStrengthInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["label_abv_tenths", "measured_abv"]);
  const work = new Working(settings);
  const labelHundredths = asked.number("label_abv_tenths") * 10;
  const trueHundredths = halfUpWhole(asked.number("measured_abv") * 100);
  const rows = work.figure("strength_label_tolerance");
  const row = (hundredths: number): number =>
    hundredths > rows.beer_up_to_abv_tenths * 10
      ? rows.stronger_within_abv_hundredths
      : rows.within_abv_hundredths;
  const byLabel = row(labelHundredths);
  const byTrue = row(trueHundredths);
  const stricter = Math.min(byLabel, byTrue);
  const off = Math.abs(labelHundredths - trueHundredths);
  work.step("Off by = |label - true|", off / 100, "% vol", 2);
  work.step("Allowed, the stricter row", stricter / 100, "% vol", 2);
  const unsettled = off <= byLabel !== off <= byTrue;
  if (unsettled) work.caution("strength_row_unsettled");
  return work.done({
    within: off <= stricter,
    unsettled,
    allowed_abv: stricter / 100,
    off_by_abv: off / 100,
  });
}
