// The round: the stops in the order in which they are made, what to load so that it comes off in
// that order, and what to expect back at each.

import { londonDate } from "../../../domain/calendar.ts";
import { roundOrder } from "../../../domain/fleet/stops.ts";
import type { Brewery } from "../../../domain/records.ts";
import { attempt } from "../../attempt.ts";
import { count, dayWords, listWords, sentence } from "../../words.ts";
import type { Customers } from "../customers.ts";
import { brokenPromise, type Holding } from "../holdings.ts";
import { saidWords } from "../reasons.ts";
import type { Stop } from "./drops.ts";

export type Worked = ReturnType<typeof roundOrder>;

/** A stop in its turn; `legM` is the way to it, null where nobody can know it. */
export interface Turn {
  stop: Stop;
  legM: number | null;
  placed: boolean;
}

export interface Round {
  /** The stop handed over last, where the van is; null where it is at the brewery. */
  from: Stop | null;
  turns: Turn[];
  backM: number | null;
  /** How it was worked out; null where there are more stops than the rule takes. */
  worked: Worked | null;
}

/**
 * What is not on the van: all of it until a stop of today was handed over, and after that what was
 * begun since. `made` are the stops handed over today, the last one first.
 */
const notLoaded = (made: readonly Stop[]): ((stop: Stop) => boolean) => {
  const since = made[0]?.set_by.handed_over_at ?? "";
  return ({ numbers, set_by }) => numbers.length > 0 && (set_by.customer ?? "") > since;
};

export const roundOf = (
  stops: readonly Stop[],
  made: readonly Stop[],
  customers: Customers,
  brewery: Brewery | undefined,
): Round => {
  const mapOf = ({ customer }: Stop) => customers.get(customer)?.fields.map ?? null;
  // Whoever has to load all that is left is at the brewery again.
  const onItsWay = made.length > 0 && !stops.every(notLoaded(made));
  const from = onItsWay ? (made.find((stop) => mapOf(stop) !== null) ?? null) : null;
  const inputs = {
    start: brewery?.fields.map ?? null,
    van: from && mapOf(from),
    stops: stops.map((one) => mapOf(one) ?? {}),
  };
  const worked = attempt(() => roundOrder(inputs));
  const order = worked?.result.order ?? stops.map((_, stop) => ({ stop, leg_m: null }));
  const turns = order.flatMap(({ stop: at, leg_m }) => {
    const stop = stops[at];
    return stop === undefined ? [] : [{ stop, legM: leg_m, placed: mapOf(stop) !== null }];
  });
  return { from, turns, backM: worked?.result.back_m ?? null, worked };
};

/** What is dropped last goes on the van first, so that it lies behind the rest. */
export const loadOrder = (turns: readonly Turn[], made: readonly Stop[]): Stop[] =>
  turns
    .map(({ stop }) => stop)
    .filter(notLoaded(made))
    .reverse();

/** "4.2 km"; below a kilometre in tenths too, as a van's meter counts. */
export const kmWords = (metres: number): string => `${(metres / 1000).toFixed(1)}\u00a0km`;

/** "4.2 km further.", or for the first "from" where the van is; or why that cannot be said. */
export const legWords = ({ legM, placed }: Turn, from: string | null): string => {
  if (!placed) return "No place on the map.";
  return legM === null ? "" : `${kmWords(legM)} ${from === null ? "further" : `from ${from}`}.`;
};

const MOST_NAMED = 6;

/** What is overdue there, what they say of it, and what they promised: "3 of ours there; 111 and 112 are overdue." */
export const backWords = (holding: Holding | undefined, now: string): string => {
  if (holding === undefined) return "None of ours there.";
  const { away, record } = holding;
  const late = away.filter(({ overdue }) => overdue > 0).map(({ standing }) => standing.number);
  const verb = late.length === 1 ? "is overdue" : "are overdue";
  const lateWords = late.length === 0 ? "" : `; ${listWords(late, MOST_NAMED)} ${verb}`;
  const promised = record?.chase?.promised_on ?? null;
  const broken = brokenPromise(holding, now);
  const promise =
    broken !== null
      ? ` Promised for ${dayWords(broken, now)}, not kept.`
      : promised === null || promised < londonDate(now)
        ? ""
        : ` Promised for ${dayWords(promised, now)}.`;
  const said = saidWords(holding);
  return `${count(away.length, "container")} of ours there${lateWords}.${said && ` ${said}`}${promise}`;
};

export const dropWords = ({ numbers }: Stop): string =>
  numbers.length === 0 ? "Nothing to drop yet." : `Drop ${listWords(numbers, MOST_NAMED)}.`;

/** All that a stop's line says; of the first also whence the van comes to it. */
export const turnWords = (
  turn: Turn,
  from: string | null,
  holding: Holding | undefined,
  now: string,
): string =>
  [dropWords(turn.stop), backWords(holding, now), legWords(turn, from)]
    .filter(Boolean)
    .map(sentence)
    .join(" ");

/** Those who promised containers for today and are not gone to: a way there is all it takes. */
export const promisedToday = (
  holdings: readonly Holding[],
  goneTo: readonly Stop[],
  now: string,
): Holding[] => {
  const customers = new Set(goneTo.map(({ customer }) => customer));
  const today = londonDate(now);
  return holdings.filter(
    ({ customer, record }) => record?.chase?.promised_on === today && !customers.has(customer),
  );
};
