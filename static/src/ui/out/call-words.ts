// Why a customer stands where it does among those to call, in a sentence or two.

import type { Chase, ChaseOutcome } from "../../domain/records.ts";
import { pounds } from "../words/money.ts";
import { count, dateWords, dayWords } from "../words.ts";
import type { Call, Worth } from "./calls.ts";
import type { Holding } from "./holdings.ts";
import { byKindWords, chaseWords, saidWords } from "./reasons.ts";

const lateWords = ({ away }: Holding, late: number, longest: number): string => {
  if (away.length === 1) return `${byKindWords(away)}, out ${count(longest, "day")}`;
  const which = late === away.length ? "all overdue" : `${late} overdue`;
  return `${byKindWords(away)}, ${which}, the longest out ${count(longest, "day")}`;
};

/**
 * How likely what is overdue comes by itself, as the money has it: the least likely, of those that
 * were out no longer than some that came back.
 */
const chance = ({ result: { out, late, least_back_pct } }: Worth, by: string): string => {
  if (least_back_pct === null) return `Nothing has come back after so long${by}.`;
  const judged = out.filter(({ late_days, back_pct }) => late_days > 0 && back_pct !== null);
  const orMore = judged.some(({ back_pct }) => back_pct !== least_back_pct) ? " or more" : "";
  const says = `Counted on to be back by itself in a fortnight: ${least_back_pct} %${orMore}`;
  const others = late - judged.length;
  if (others === 0) return `${says}${by}.`;
  const rest = others === 1 ? "the other one" : `the other ${others}`;
  return `${says} for ${judged.length} of them${by}. Nothing has come back after so long as ${rest}.`;
};

/** The same, and by whose trips. */
export const chanceWords = (worth: Worth): string =>
  chance(
    worth,
    worth.result.judged_by === "own" ? ", by its own trips" : ", by the trips of all customers",
  );

export const stakeWords = ({ result }: Worth): string => {
  const lost = result.loss_pence >= 50 ? `, ${pounds(result.loss_pence)} of it for good` : "";
  return `${pounds(result.worth_pence)} would likely still be out in a fortnight${lost}.`;
};

/** "9 firkins, 8 overdue, the longest out 61 days. Back by itself … Promised for 12 Nov, not kept." */
export const callReason = ({ holding, worth }: Call, now: string): string => {
  const { late, longest_days } = worth.result;
  const chase = chaseWords(holding, now);
  return [
    `${lateWords(holding, late, longest_days)}.`,
    chance(worth, ""),
    saidWords(holding),
    chase,
  ]
    .filter(Boolean)
    .join(" ");
};

/** "Promised for Thu." or "Asked; again on 3 Dec." */
export const restWords = ({ rest }: Call, now: string): string => {
  if (rest === null) return "";
  const day = dayWords(rest.until, now);
  return rest.why === "promised" ? `Promised for ${day}.` : `Asked; again on ${day}.`;
};

const OUTCOMES: { readonly [outcome in ChaseOutcome]: string } = {
  spoke: "Somebody answered.",
  no_answer: "Nobody answered.",
  not_there: "They say it is not there.",
  wrote: "In writing.",
};

/** One that was before the last: "Nobody answered. Promised for 12 Nov. “in the yard”" */
export const earlierWords = (
  { outcome, promised_on, words }: Pick<Chase, "outcome" | "promised_on" | "words">,
  now: string,
): string =>
  [
    outcomeWords(outcome),
    promised_on === null ? "" : `Promised for ${dateWords(promised_on, now)}.`,
    words === "" ? "" : `“${words}”`,
  ]
    .filter(Boolean)
    .join(" ");

/** What came of asking; "" where nobody said. */
export const outcomeWords = (outcome: ChaseOutcome | null): string =>
  outcome === null ? "" : OUTCOMES[outcome];
