/** Strength, in whole numbers by the published table. Twin of cellarapp/domain/bench/strength.py. */
import type { Settings } from "../figures.ts";
import { Asked, numberIn } from "../inputs.ts";
import { cut, halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import { askedSugar, SUGAR_FIELDS, type SugarInputs, strengthRisePct } from "./sugars.ts";

/** A degree is a thousandth of specific gravity, and the table goes by tenths of a degree. */
const TENTHS_PER_GRAVITY = 10_000;

/** Strength in ten-thousandths of % vol, and the fall and factor that it comes from. */
export interface ByTable {
  strength: number;
  fallTenths: number;
  thousandths: number;
}

/** Fall of gravity, taken to a tenth of a degree first, times the factor for it. */
export function strengthByTable(work: Working, originalGravity: number, gravity: number): ByTable {
  const table = work.figure("excise_strength_factors");
  const fall = halfUpWhole((originalGravity - gravity) * TENTHS_PER_GRAVITY);
  const why = "The published table of factors goes no further.";
  const most = (table.at(-1)?.up_to_tenths ?? 0) / 10;
  numberIn("gravity_fall", fall / 10, 0, most, "degrees", why);
  const thousandths = table.find((row) => fall <= row.up_to_tenths)?.thousandths ?? 0;
  work.step("Fall of gravity = original - present", fall / 10, "degrees", 1);
  work.step("Factor for that fall", thousandths / 1000, "% vol", 3);
  const strength = fall * thousandths;
  work.step("Strength = fall x factor", strength / TENTHS_PER_GRAVITY, "% vol", 4);
  return { strength, fallTenths: fall, thousandths };
}

/** ABV-1: strength from original and present gravity; for duty it is cut, not rounded. */
export function strength(
  inputs: { original_gravity: number; present_gravity: number },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["original_gravity", "present_gravity"]);
  const work = new Working(settings);
  const original = asked.number("original_gravity");
  const found = strengthByTable(work, original, asked.number("present_gravity"));
  const digits = work.figure("duty_strength_digits");
  const tenths = Math.floor(found.strength / (TENTHS_PER_GRAVITY / 10 ** digits));
  work.caution("strength_is_guidance");
  return work.done({
    fall_degrees: found.fallTenths / 10,
    factor: found.thousandths / 1000,
    strength_pct: found.strength / TENTHS_PER_GRAVITY,
    abv_tenths: tenths,
    duty_strength_pct: tenths / 10 ** digits,
  });
}

/** The sugar is asked for where there is any; additions are all liquids that go in. */
export interface ExpectedStrengthInputs extends SugarInputs {
  original_gravity: number;
  expected_gravity: number;
  sugar_g_per_l: number;
  additions_ml_per_l: number;
}

/** ABV-2: strength to expect in the cask: after secondary, thinned, with primings. */
export function expectedStrength(inputs: ExpectedStrengthInputs, settings: Settings | null = null) {
  const fields = ["original_gravity", "expected_gravity", "sugar_g_per_l", "additions_ml_per_l"];
  const asked = new Asked(inputs, [...fields, ...SUGAR_FIELDS]);
  const work = new Working(settings);
  const original = asked.number("original_gravity");
  const found = strengthByTable(work, original, asked.number("expected_gravity"));
  const beer = found.strength / TENTHS_PER_GRAVITY;
  const thinned = beer * (1 - asked.number("additions_ml_per_l") / 1000);
  work.step("Thinned = strength x (1 - additions / 1000)", thinned, "% vol", 3);
  const sugarGPerL = asked.number("sugar_g_per_l");
  const rise = sugarGPerL > 0 ? strengthRisePct(work, askedSugar(work, asked), sugarGPerL) : 0;
  const total = work.step("Expected = thinned + rise", thinned + rise, "% vol", 3);
  const digits = work.figure("duty_strength_digits");
  work.caution("strength_is_guidance");
  work.caution("duty_on_strength_when_drunk");
  return work.done({
    before_pct: halfUp(beer, 3),
    thinned_pct: halfUp(thinned, 3),
    rise_pct: halfUp(rise, 3),
    strength_pct: halfUp(total, 3),
    duty_strength_pct: cut(total, digits),
    abv_tenths: halfUpWhole(cut(total, digits) * 10),
  });
}
