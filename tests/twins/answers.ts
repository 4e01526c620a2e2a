/** The phone's side of every rule, by the names of reference.py. */
import { takeApart } from "../../static/src/domain/asset-number.ts";
import * as calendar from "../../static/src/domain/calendar.ts";
import { caskInputs } from "../../static/src/domain/cellar/told.ts";
import { mostThatFitsMl } from "../../static/src/domain/containers.ts";
import { resolve } from "../../static/src/domain/corrections.ts";
import type { Entry, RecordKind } from "../../static/src/domain/entries.ts";
import { DomainError } from "../../static/src/domain/errors.ts";
import { entriesBySubject, fold, inOrder, step } from "../../static/src/domain/fold.ts";
import * as numbers from "../../static/src/domain/numbers.ts";
import { openQueries } from "../../static/src/domain/queries.ts";
import { bestBeforeOn, readiness } from "../../static/src/domain/readiness.ts";
import { drawnMl, foldRecord } from "../../static/src/domain/records.ts";
import { mayPutRight, mayRecord } from "../../static/src/domain/roles.ts";
import { blank } from "../../static/src/domain/standing.ts";
import * as trips from "../../static/src/domain/trips.ts";
import { TRADE } from "./trade.ts";

/** Each container's standing, open queries and inferred steps, and what the corrections did. */
function ledger(entries: Entry[]) {
  const { countsFor, droppedBy } = resolve(entries);
  const standings: Record<string, unknown> = {};
  const inferred: Record<string, string[]> = {};
  for (const [subject, counting] of entriesBySubject(entries)) {
    if (!numbers.isNumber(subject)) continue;
    const standing = fold(subject, counting);
    standings[subject] = { standing, open: openQueries(standing).map((q) => q.id) };
    let stepped = blank(subject);
    for (const entry of inOrder(counting)) {
      const after = step(stepped, entry);
      stepped = after.standing;
      if (after.inferred.length > 0) inferred[entry.id] = after.inferred;
    }
  }
  return {
    standings,
    inferred,
    counts_for: Object.fromEntries(countsFor),
    dropped_by: Object.fromEntries(droppedBy),
  };
}

function records(type: RecordKind, entries: Entry[]) {
  const subject = entries[0]?.subject ?? "";
  return {
    record: foldRecord(type, entries),
    drawn_ml: drawnMl(subject, entries),
  };
}

// biome-ignore lint/suspicious/noExplicitAny: arguments come off the wire.
const RULES: Record<string, (...args: any[]) => unknown> = {
  normal_number: numbers.normalNumber,
  bare_digits: numbers.bareDigits,
  matches: numbers.matches,
  run_of_numbers: numbers.runOfNumbers,
  most_that_fits_ml: mostThatFitsMl,
  take_apart: takeApart,
  london_date: calendar.londonDate,
  add_days: calendar.addDays,
  days_between: calendar.daysBetween,
  london_minute: calendar.londonMinute,
  london_instant: calendar.londonInstant,
  same_time_after: calendar.sameTimeAfter,
  ledger,
  records,
  readiness: (entries: Entry[], beer, now: string, own) =>
    readiness(fold("117", entries), beer, now, own),
  cask_inputs: (entries: Entry[], around) => caskInputs(fold("117", entries), around),
  best_before_on: bestBeforeOn,
  due_on: trips.dueOn,
  days_out: trips.daysOut,
  days_overdue: trips.daysOverdue,
  may_record: mayRecord,
  may_put_right: mayPutRight,
  ...TRADE,
};

/** What a rule says of these arguments: {value}, or {error} with the slug of what it refuses. */
export function answer(rule: string, args: unknown[]): object {
  try {
    const known = RULES[rule];
    if (!known) return { error: `no rule ${rule}` };
    return { value: known(...args) };
  } catch (fault) {
    if (fault instanceof DomainError) return { error: fault.slug };
    return { error: `fault: ${fault}` };
  }
}
