// What finings put into a fill, as far as a label or a warning has to tell: isinglass, and sulphite.

import { sulphite } from "../../domain/bench/finings-conditions.ts";
import type { FiningsProduct } from "../../domain/bench/rates.ts";
import type { Settings } from "../../domain/figures.ts";
import type { BeerFields, GyleFields } from "../../domain/record-fields.ts";
import type { Lot } from "../../domain/records.ts";
import type { Contents, Dose } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";

type Filled = Pick<Contents, "doses" | "volume_ml">;

/** What decides what finings put into a beer; none of a fill while it is only planned. */
export interface Fined {
  contents: Filled | null;
  beer: Partial<BeerFields>;
  gyle: Partial<GyleFields>;
  lots: ReadonlyMap<string, Lot>;
}

const PRODUCTS: { readonly [what in Dose["what"]]?: FiningsProduct } = {
  isinglass: "isinglass",
  auxiliary_alginate: "auxiliary",
  auxiliary_silica: "auxiliary",
};

const has = (doses: readonly Dose[], what: Dose["what"]): boolean =>
  doses.some((dose) => dose.what === what);

/**
 * Whether isinglass is in it, or still to come: it follows alginate by hours. Null where nobody
 * has said.
 */
export const isinglassIn = ({ contents, beer }: Pick<Fined, "contents" | "beer">) => {
  const doses = contents?.doses ?? [];
  if (has(doses, "isinglass")) return true;
  if (beer.vegan === true) return false;
  const rate = beer.isinglass_ml_per_hl;
  if (doses.length > 0) return has(doses, "auxiliary_alginate") && (rate ?? 0) > 0;
  return rate === undefined ? null : rate > 0;
};

const byRate = (product: FiningsProduct, mlPerHl = 0) =>
  mlPerHl > 0 ? [{ product, ml_per_l: mlPerHl / 100, so2_mg_per_l: null }] : [];

/** As noted with the fill, by the sheets of their lots; where nothing was, by the beer's rates. */
const additionsOf = ({ contents, beer, lots }: Fined) => {
  const isinglass = isinglassIn({ contents, beer })
    ? byRate("isinglass", beer.isinglass_ml_per_hl)
    : [];
  if (contents === null || contents.doses.length === 0) {
    const { auxiliary = "none" } = beer;
    return [
      ...(auxiliary === "none" ? [] : byRate("auxiliary", beer.auxiliary_ml_per_hl)),
      ...isinglass,
    ];
  }
  const { doses, volume_ml } = contents;
  const additions = doses.flatMap(({ what, amount_ml, lot }) => {
    const product = PRODUCTS[what];
    if (product === undefined) return [];
    const ml_per_l = ((amount_ml ?? 0) * 1000) / volume_ml;
    return [{ product, ml_per_l, so2_mg_per_l: lots.get(lot ?? "")?.fields.so2_mg_per_l ?? null }];
  });
  return has(doses, "isinglass") ? additions : [...additions, ...isinglass];
};

/** Carried in and in total, by the rule; null where a dose cannot be. */
export const sulphiteIn = (fined: Fined, settings: Settings) => {
  const own = fined.gyle.sulphite_decimg_per_l;
  const beer_so2_mg_per_l = own === undefined ? null : own / 10;
  return attempt(() => sulphite({ beer_so2_mg_per_l, additions: additionsOf(fined) }, settings));
};

type Worked = NonNullable<ReturnType<typeof sulphiteIn>>;

/** For a label; null while not known. What finings alone make it declare is known. */
export const sulphitesOnLabel = (worked: Worked | null): number | null => {
  if (worked === null) return null;
  const { total_mg_per_l: total, carried_in_mg_per_l: carried, declare } = worked.result;
  return total ?? (declare ? carried : null);
};

/** "8 mg/L, 6.9 of it by finings: need not be declared."; nothing where there is nothing to say. */
export const sulphiteWords = (worked: Worked): string => {
  const { total_mg_per_l: total, carried_in_mg_per_l: carried, declare } = worked.result;
  if (total === null) {
    if (carried === 0) return "";
    return `${carried} mg/L carried in by finings${declare ? ": to be declared" : "; the beer's own is not entered"}.`;
  }
  return `${total} mg/L, ${carried} of it by finings: ${declare ? "to be declared" : "need not be declared"}.`;
};
