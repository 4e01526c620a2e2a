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
  /** The lots that go in next, for what is still to come. */
  next?: LotOf;
  /** Isinglass is about to go in, whatever has. */
  fining?: boolean;
}

/** Of each product a lot of it. */
export type LotOf = { readonly [what in Dose["what"]]?: Lot };

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

type Part = { what: Dose["what"]; product: FiningsProduct; ml_per_l: number; lot: Lot | undefined };

const part = (what: Dose["what"], ml_per_l: number, lot: Lot | undefined): Part[] => {
  const product = PRODUCTS[what];
  return product === undefined ? [] : [{ what, product, ml_per_l, lot }];
};

/** As noted with the fill, with their lots; where nothing was, by the beer's rates. */
export const finingsIn = ({ contents, beer, lots, next = {}, fining = false }: Fined): Part[] => {
  const byRate = (what: Dose["what"], mlPerHl = 0) =>
    mlPerHl > 0 ? part(what, mlPerHl / 100, next[what]) : [];
  const toCome = isinglassIn({ contents, beer })
    ? byRate("isinglass", beer.isinglass_ml_per_hl)
    : [];
  if (contents === null || contents.doses.length === 0) {
    const { auxiliary = "none" } = beer;
    return [
      ...(auxiliary === "none" ? [] : byRate(auxiliary, beer.auxiliary_ml_per_hl)),
      ...toCome,
    ];
  }
  const { doses, volume_ml } = contents;
  const wentIn = doses.flatMap(({ what, amount_ml, lot }) =>
    part(what, ((amount_ml ?? 0) * 1000) / volume_ml, lots.get(lot ?? "")),
  );
  return has(doses, "isinglass") && !fining ? wentIn : [...wentIn, ...toCome];
};

/** Carried in and in total, by the rule and the sheets of the lots; null where a dose cannot be. */
export const sulphiteIn = (fined: Fined, settings: Settings) => {
  const own = fined.gyle.sulphite_decimg_per_l;
  const beer_so2_mg_per_l = own === undefined ? null : own / 10;
  const additions = finingsIn(fined).map(({ product, ml_per_l, lot }) => ({
    product,
    ml_per_l,
    so2_mg_per_l: lot?.fields.so2_mg_per_l ?? null,
  }));
  return attempt(() => sulphite({ beer_so2_mg_per_l, additions }, settings));
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
