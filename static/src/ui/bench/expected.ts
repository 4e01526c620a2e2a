// The strength to expect in the cask: after its second fermentation, thinned by what is added and
// raised by the sugar; and whether the label may call it what it does.

import { expectedStrength } from "../../domain/bench/strength.ts";
import { askedSugar, SUGAR_FIELDS } from "../../domain/bench/sugars.ts";
import { askedSyrup, SYRUP_FIELDS } from "../../domain/bench/syrup.ts";
import { labelStrength } from "../../domain/cellar/label.ts";
import { DomainError } from "../../domain/errors.ts";
import { Asked } from "../../domain/inputs.ts";
import { Working } from "../../domain/working.ts";
import { attempt } from "../attempt.ts";
import type { AnyWorked } from "../parts/working.ts";
import { absent, type DoseLine, type Missing, type Racked, refused } from "./dose-line.ts";
import { isSyrup, sugarOf, syrupOf } from "./primings-line.ts";

type Recipe = Pick<Racked, "beer" | "gyle" | "settings">;

/** What went into a container besides beer, as it was noted. */
export interface Added {
  what: string;
  amount_ml?: number | null;
  amount_g?: number | null;
}

/** What goes into the first of the sizes as worked out; null while a dose is not known. */
export const addedBy = (lines: readonly DoseLine[]): Added[] | null => {
  if (lines.some(({ each, missing }) => each === null && missing !== null)) return null;
  return lines.map(({ what, unit, each }) => ({
    what,
    [unit === "mL" ? "amount_ml" : "amount_g"]: each?.[0] ?? 0,
  }));
};

/** Grams of sugar in a millilitre of the beer's syrup. */
const gramsPerMl = ({ beer, settings }: Recipe): number => {
  if (!isSyrup(beer)) return 0;
  const work = new Working(settings);
  const sugar = askedSugar(work, new Asked(sugarOf(beer), [...SUGAR_FIELDS]));
  const perL = askedSyrup(work, new Asked(syrupOf(beer), [...SYRUP_FIELDS]), sugar) ?? 0;
  return perL / 1000;
};

const sugarGrams = (recipe: Recipe, added: readonly Added[]): number =>
  added
    .filter(({ what }) => what === "primings")
    .reduce(
      (sum, { amount_g, amount_ml }) =>
        sum + (amount_g ?? 0) + (amount_ml ? amount_ml * gramsPerMl(recipe) : 0),
      0,
    );

/** It falls to its limit; below it already, it stays where it is. */
const asked = (recipe: Recipe, added: readonly Added[], volumeMl: number) => {
  const { beer, gyle } = recipe;
  const limit = beer.limit_gravity_e4 ?? 0;
  const present = gyle.present_gravity_e4 ?? limit;
  const liquids = added.reduce((sum, { amount_ml }) => sum + (amount_ml ?? 0), 0);
  const grams = sugarGrams(recipe, added);
  return {
    original_gravity: (gyle.original_gravity_e4 ?? 0) / 10_000,
    expected_gravity: Math.min(limit, present) / 10_000,
    sugar_g_per_l: (grams * 1000) / volumeMl,
    additions_ml_per_l: (liquids * 1000) / volumeMl,
    ...(grams > 0 ? sugarOf(beer) : {}),
  };
};

export interface Expected {
  worked: ReturnType<typeof expectedStrength> | null;
  /** Against the strength on the label, where there is one. */
  byLabel: ReturnType<typeof labelStrength> | null;
  missing: Missing | null;
}

const without = (missing: Missing): Expected => ({ worked: null, byLabel: null, missing });

/** With what was added to so many mL of fill. */
export const expectedIn = (recipe: Recipe, added: readonly Added[], volumeMl: number): Expected => {
  const { beer, gyle, settings } = recipe;
  const ofGyle = absent({ "original gravity": gyle.original_gravity_e4 });
  if (ofGyle.length > 0) return without({ of: "gyle", words: ofGyle });
  const ofBeer = absent({ "attenuation limit": beer.limit_gravity_e4 });
  if (ofBeer.length > 0) return without({ of: "beer", words: ofBeer });
  try {
    const worked = expectedStrength(asked(recipe, added, volumeMl), settings);
    const label_abv_tenths = beer.abv_tenths;
    const measured_abv = worked.result.strength_pct;
    const byLabel =
      label_abv_tenths === undefined
        ? null
        : attempt(() => labelStrength({ label_abv_tenths, measured_abv }, settings));
    return { worked, byLabel, missing: null };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    return without(refused(fault));
  }
};

export const workedOf = ({ worked, byLabel }: Expected): AnyWorked[] =>
  [worked, byLabel].filter((one) => one !== null);

const hundredths = (pct: number): string => (Math.floor(pct * 100 + 0.5) / 100).toFixed(2);

/** "4.27", for a figure beside its unit. */
export const expectedPct = ({ worked }: Expected): string | null =>
  worked && hundredths(worked.result.strength_pct);

/** "4.31 after the second fermentation, 4.25 with what is added, 0.07 more from sugar." */
export const expectedWords = ({ worked }: Expected): string => {
  if (worked === null) return "";
  const { before_pct, thinned_pct, rise_pct } = worked.result;
  return [
    `${hundredths(before_pct)} after the second fermentation`,
    thinned_pct === before_pct ? "" : `thinned to ${hundredths(thinned_pct)} by what is added`,
    rise_pct === 0 ? "" : `${hundredths(rise_pct)} more from sugar`,
  ]
    .filter(Boolean)
    .join(", ");
};

/** How the label's strength stands to it by law; "" where there is no label or no figure. */
export const labelledWords = (
  { byLabel }: Expected,
  labelTenths: number | undefined,
): { says: string; look: boolean } => {
  if (byLabel === null || labelTenths === undefined) return { says: "", look: false };
  const { within, allowed_abv, off_by_abv } = byLabel.result;
  const label = `${(labelTenths / 10).toFixed(1)} % on the label`;
  return within
    ? { says: `${label} is within the ${allowed_abv} % that the law allows`, look: false }
    : {
        says: `${label} is ${off_by_abv.toFixed(2)} % off: by law ${allowed_abv} % at most`,
        look: true,
      };
};
