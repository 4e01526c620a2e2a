/** Queries: what cannot be right as it stands, waiting for a person. Twin of cellarapp/domain/queries.py. */
import type { Entry, Facts } from "./entries.ts";
import type { Query, Settlement, Standing } from "./standing.ts";

/** LIFE-24: queries that have nothing left to decide once the beer they are about is gone. */
const LAPSING = ["unwashed"];

/** LIFE-27: queries about where a container is, which end once somebody has it in hand. */
export const WHEREABOUTS = ["reported", "told_not_here"];

/** Adds a query to the standing; its id names the rule and the entries that quarrel. */
export function raiseQuery(
  standing: Standing,
  rule: string,
  quarrel: string[],
  entry: Entry,
  facts: Facts = {},
): void {
  const id = [rule, ...quarrel].join(":");
  const query: Query = { id, rule, entries: quarrel, at: entry.effective_at, facts };
  standing.queries = [...standing.queries.filter((q) => q.id !== id), query];
}

/** LIFE-24, LIFE-27: drops the queries of these rules; those that end with the beer. */
export function lapse(standing: Standing, rules = LAPSING): void {
  standing.queries = standing.queries.filter((q) => !rules.includes(q.rule));
}

/** The settlements that no later one replaces. */
export function liveSettlements(settlements: Settlement[]): Settlement[] {
  const replaced = new Set(settlements.flatMap((s) => s.replaces));
  return settlements.filter((s) => !replaced.has(s.entry));
}

/** LIFE-21: the way out on which all live settlements agree, or null. */
export function agreedWay(settlements: Settlement[]): string | null {
  const ways = new Set(liveSettlements(settlements).map((s) => s.way));
  const [way] = ways;
  return ways.size === 1 && way !== undefined ? way : null;
}

/** The queries that wait for a person; settled in two ways one is open again. */
export function openQueries(standing: Standing): Query[] {
  return standing.queries.filter((q) => agreedWay(standing.settlements[q.id] ?? []) !== "right");
}
