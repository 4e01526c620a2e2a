// A made-up solution: what its log says of it now, in words.

import { type AgainstSolution, solutionState } from "../../../domain/bench/solution.ts";
import type { Settings } from "../../../domain/figures.ts";
import type { Solution } from "../../../domain/records.ts";
import { attempt } from "../../attempt.ts";
import { count, type Known, timeWords } from "../../words.ts";

const HOUR_MS = 3_600_000;

const AGAINST: { [reason in AgainstSolution]: string } = {
  thrown_away: "thrown away",
  too_weak: "too weak",
  used_up: "used as often as it may be",
  too_old: "too old",
};

/** What the rule says; null where the log lacks what the rule needs. */
export const stateOf = ({ fields, uses, checks }: Solution, now: string, own: Settings) => {
  const { made_at, made_mg_per_l = 0, least_mg_per_l = 0, most_uses, most_hours } = fields;
  if (made_at === undefined) return null;
  const asked = {
    made_mg_per_l,
    last_check_mg_per_l: checks.at(-1)?.strength_mg_per_l ?? null,
    least_mg_per_l,
    uses,
    hours_old: Math.max(0, (Date.parse(now) - Date.parse(made_at)) / HOUR_MS),
    thrown_away: fields.thrown_away ?? false,
    most_uses: most_uses ?? null,
    most_hours: most_hours ?? null,
  };
  return attempt(() => solutionState(asked, own));
};

/** Those still standing about, the last made first. */
export const inUse = (solutions: ReadonlyMap<string, Solution>): [string, Solution][] =>
  [...solutions]
    .filter(([, { fields }]) => !fields.retired && !fields.thrown_away)
    .sort(([, a], [, b]) => ((a.fields.made_at ?? "") < (b.fields.made_at ?? "") ? 1 : -1));

export const strengthOf = ({ fields, checks }: Solution): number =>
  checks.at(-1)?.strength_mg_per_l ?? fields.made_mg_per_l ?? 0;

/** "200 mg/L, made 09:40, 3 uses." and why not to use it again. */
export const solutionWords = (
  solution: Solution,
  known: Known,
  own: Settings,
): { says: string; tone: "look" | "fine" | null } => {
  const { made_at } = solution.fields;
  const made = made_at === undefined ? "" : `, made ${timeWords(made_at, known.now)}`;
  const checked = solution.checks.length > 0 ? " as checked" : ", not checked yet";
  const log = `${strengthOf(solution)} mg/L${checked}${made}, ${count(solution.uses, "use")}.`;
  const state = stateOf(solution, known.now, own);
  if (state === null) return { says: log, tone: null };
  if (state.result.usable) return { says: log, tone: "fine" };
  const because = state.result.because.map((reason) => AGAINST[reason]).join(", ");
  return { says: `Not again: ${because}. ${log}`, tone: "look" };
};
