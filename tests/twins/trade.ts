/** The trade's rules for the twin: what each worked out, or what it refused with its facts. */
import { DomainError } from "../../static/src/domain/errors.ts";
import { CELLAR, CELLAR_UNROUNDED } from "./cellar_trade.ts";
import { FLEET } from "./fleet_trade.ts";
import { BENCH, UNROUNDED } from "./trade_bench.ts";

/** JSON knows no NaN and no infinity: they travel as {"$": "NaN"}. */
function revive(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(revive);
  if (typeof value !== "object" || value === null) return value;
  if ("$" in value) return Number(value.$);
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, revive(one)]));
}

// biome-ignore lint/suspicious/noExplicitAny: arguments come off the wire.
type Rule = (...args: any[]) => unknown;

function judged(rule: Rule): Rule {
  return (...args) => {
    try {
      return { worked: rule(...args.map(revive)) };
    } catch (fault) {
      if (fault instanceof DomainError) return { refused: fault.slug, facts: fault.facts };
      throw fault;
    }
  };
}

export const TRADE: Record<string, Rule> = {
  ...Object.fromEntries(
    Object.entries({ ...BENCH, ...CELLAR, ...FLEET }).map(([name, rule]) => [name, judged(rule)]),
  ),
  ...UNROUNDED,
  ...CELLAR_UNROUNDED,
};
