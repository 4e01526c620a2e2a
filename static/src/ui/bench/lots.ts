// Lots of what is added: which one is used of each, and how long finings still last.

import { finingsLife } from "../../domain/bench/finings-lots.ts";
import { londonDate } from "../../domain/calendar.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Lot } from "../../domain/records.ts";
import type { Dose, Standing } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";
import type { LotOf } from "../cellar/finings-in.ts";
import { count, dateWords, degrees, listWords, sentence } from "../words.ts";

export type Lots = ReadonlyMap<string, Lot>;
type Added = Dose["what"];

/** Of each product the lot that is noted with its dose; left out where none is. */
export type LotsInUse = { readonly [what in Added]?: string };

/** As chosen on this phone: a lot's id, or that none is noted. */
export type ChosenLots = { readonly [what in Added]?: string };
export const NO_LOT = "none";

/** Those of a product that are not used up, the last received first. */
export const liveLots = (lots: Lots, what: Added): [string, Lot][] =>
  [...lots]
    .filter(([, { fields }]) => fields.what === what && !fields.retired)
    .sort(([, a], [, b]) => ((a.fields.received_on ?? "") < (b.fields.received_on ?? "") ? 1 : -1));

/** The last dose that was noted with each lot still live, by product. */
const lastUsed = (lots: Lots, containers: Iterable<Standing>): Map<Added, Dose> => {
  const last = new Map<Added, Dose>();
  for (const { contents } of containers) {
    for (const dose of contents?.doses ?? []) {
      const fields = lots.get(dose.lot ?? "")?.fields;
      if (fields === undefined || fields.retired || fields.what !== dose.what) continue;
      if (dose.since > (last.get(dose.what)?.since ?? "")) last.set(dose.what, dose);
    }
  }
  return last;
};

/** As chosen on this phone while it is live, else the last one used, else the last received. */
export const lotsInUse = (
  lots: Lots,
  chosen: ChosenLots,
  containers: Iterable<Standing>,
): LotsInUse => {
  const last = lastUsed(lots, containers);
  const found: { [what in Added]?: string } = {};
  for (const what of new Set([...lots.values()].map(({ fields }) => fields.what))) {
    if (what === undefined || chosen[what] === NO_LOT) continue;
    const live = liveLots(lots, what).map(([id]) => id);
    const choice = chosen[what] ?? "";
    const id = live.includes(choice) ? choice : (last.get(what)?.lot ?? live[0]);
    if (id !== undefined) found[what] = id;
  }
  return found;
};

/** The lots themselves, by product. */
export const lotsThemselves = (lots: Lots, used: LotsInUse): LotOf =>
  Object.fromEntries(Object.entries(used).map(([what, id]) => [what, lots.get(id)]));

const LASTS: { readonly [what in Added]?: "isinglass" | "auxiliary" } = {
  isinglass: "isinglass",
  auxiliary_alginate: "auxiliary",
  auxiliary_silica: "auxiliary",
};

/** How long a lot lasts by its storage; null for sugar and hops, and while that is not entered. */
export const lotLife = ({ fields }: Lot, now: string, own: Settings) => {
  const { what, received_on, stored_temp_decidegc: stored } = fields;
  const product = what && LASTS[what];
  if (!product || received_on === undefined || stored === undefined) return null;
  const asked = { product, received_on, storage_temp_c: stored / 10, today: londonDate(now) };
  return attempt(() => finingsLife(asked, own));
};

/** "120 days left", "past its life since 3 Nov"; nothing where its life is not known. */
export const lifeWords = (lot: Lot, now: string, own: Settings): string => {
  const life = lotLife(lot, now, own)?.result;
  if (life === undefined) return "";
  return life.past
    ? `past its life since ${dateWords(life.use_by, now)}`
    : `${count(life.days_left, "day")} left`;
};

/** What the days rest on: "received 3 Nov and kept at 4 °C at the warmest". */
export const basisWords = ({ fields }: Lot, now: string): string => {
  const { received_on, stored_temp_decidegc: stored } = fields;
  return [
    received_on === undefined ? "" : `received ${dateWords(received_on, now)}`,
    stored === undefined ? "" : `kept at ${degrees(stored)} at the warmest`,
  ]
    .filter(Boolean)
    .join(" and ");
};

export const isPast = (lot: Lot, now: string, own: Settings): boolean =>
  lotLife(lot, now, own)?.result.past ?? false;

export const lotName = (lot: Lot | undefined): string => lot?.fields.name ?? "with no name";

/** Which lots go in, as one line; a lot past its life before all else. Null where none is known. */
export const lotsLine = (
  added: readonly { what: Added; label: string }[],
  { lots, used, now, own }: { lots: Lots; used: LotsInUse; now: string; own: Settings },
): { says: string; tone: "look" | "small" } | null => {
  const asked = added.filter(({ what }) => liveLots(lots, what).length > 0);
  if (asked.length === 0) return null;
  const each = asked.map(({ what, label }) => ({ label, lot: lots.get(used[what] ?? "") }));
  const past = each.find(({ lot }) => lot !== undefined && isPast(lot, now, own));
  if (past?.lot) {
    const since = lifeWords(past.lot, now, own);
    return { says: sentence(`${past.label} ${lotName(past.lot)} is ${since}.`), tone: "look" };
  }
  const words = each.map(({ label, lot }) =>
    lot === undefined ? `${label} not noted` : `${label} ${lotName(lot)}`,
  );
  return { says: `Lots: ${listWords(words)}`, tone: "small" };
};
