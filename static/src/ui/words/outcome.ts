// What to know before an entry is made: what is good, what it would note besides, what is odd.

import type { Query } from "../../domain/standing.ts";
import type { Outcome } from "../try-out.ts";
import { litres } from "./amounts.ts";
import type { Known } from "./known.ts";
import { brewName, customerName } from "./names.ts";
import { queryWords } from "./queries.ts";
import { timeWords } from "./time.ts";

export interface Remark {
  says: string;
  tone: "look" | "fine" | "";
}

/** "Filling it" and the like, at the head of a sentence. */
type Doing = string;

const INFERRED: { [step: string]: (o: Outcome, known: Known, doing: Doing) => string } = {
  returned: ({ before: { trip } }, known, doing) =>
    trip === null
      ? ""
      : `Still down as out at ${customerName(known, trip.customer)} since ${timeWords(trip.since, known.now)}. ${doing} notes its return.`,
  emptied: ({ before: { contents } }, known, doing) =>
    contents === null
      ? ""
      : `Still down as holding ${litres(contents.left_ml)} of ${brewName(known, contents.gyle)}. ${doing} notes that it was emptied.`,
  found: ({ before: { held } }, known, doing) =>
    held === null
      ? ""
      : `Down as missing since ${timeWords(held.since, known.now)}. ${doing} notes that it was found.`,
};

/** The same questions as afterwards, worded for the moment before. */
const ASKED: { [rule: string]: (query: Query, o: Outcome, known: Known) => string } = {
  filled_twice: (_, { before: { contents } }, known) =>
    contents === null
      ? ""
      : `Already filled today at ${timeWords(contents.since, known.now)} from ${brewName(known, contents.gyle)}. Is this the right number?`,
  unwashed: (_, { before: { clean } }, known) =>
    clean?.state === "dirty"
      ? `Not washed: empty and dirty since ${timeWords(clean.since, known.now)}.`
      : clean?.state === "failed"
        ? `Failed inspection ${timeWords(clean.since, known.now)}.`
        : "No wash on record since its last beer.",
  filled_set_aside: (_, { before: { held } }, known) =>
    held === null
      ? ""
      : `Set aside since ${timeWords(held.since, known.now)}${held.why === "" ? "" : `: ${held.why}`}.`,
  after_scrapped: (_, { before: { held } }, known) =>
    held === null ? "" : `Scrapped ${timeWords(held.since, known.now)}. Is this the right number?`,
};

const clean = ({ before: { clean, contents } }: Outcome, known: Known): Remark | null => {
  if (contents !== null) return null;
  if (clean === null) return { says: "No wash on record.", tone: "" };
  const at = timeWords(clean.since, known.now);
  if (clean.state === "washed") return { says: `Washed ${at}`, tone: "fine" };
  if (clean.state === "passed") return { says: `Inspected ${at} and passed`, tone: "fine" };
  return null;
};

/** All remarks on what would happen; the odd ones last, nearest the button. */
export const outcomeRemarks = (outcome: Outcome, known: Known, doing: Doing): Remark[] => {
  const remarks: Remark[] = [];
  const good = clean(outcome, known);
  if (good !== null) remarks.push(good);
  for (const inferred of outcome.inferred) {
    const says = INFERRED[inferred]?.(outcome, known, doing) ?? "";
    if (says !== "") remarks.push({ says, tone: "look" });
  }
  for (const query of outcome.asked) {
    const says = ASKED[query.rule]?.(query, outcome, known) || queryWords(query, known);
    remarks.push({ says, tone: "look" });
  }
  return remarks;
};
