// Coming back: what is recorded for a number, and what to know before it is.

import { londonDate } from "../../domain/calendar.ts";
import type { Facts, MadeEntry } from "../../domain/entries.ts";
import type { Standing } from "../../domain/standing.ts";
import { daysOut, daysOverdue } from "../../domain/trips.ts";
import {
  brewName,
  count,
  customerName,
  dateWords,
  type Known,
  placeFacet,
  sentence,
  timeWords,
} from "../words.ts";

export interface Remark {
  says: string;
  tone: "look" | "fine" | "";
}

export interface Draft {
  kind: MadeEntry["kind"];
  subject: string;
  facts: Facts;
}

export interface Back {
  /** Where it is put, where that is known. */
  place: string | undefined;
  /** What a number that is not on record is entered as; null leaves it to be entered later. */
  asNew: { kind: string; capacity_ml: number | null; owner?: string } | null;
  /** Beer still in it; of a single container only. */
  ullage_ml: number | null;
}

export const backDrafts = (number: string, standing: Standing | null, back: Back): Draft[] => {
  const facts: Facts = {};
  if (back.place !== undefined) facts["place"] = back.place;
  if (back.ullage_ml !== null) facts["ullage_ml"] = back.ullage_ml;
  if (standing?.trip) facts["customer"] = standing.trip.customer;
  const returned: Draft = { kind: "returned", subject: number, facts };
  return standing?.registered || back.asNew === null
    ? [returned]
    : [{ kind: "registered", subject: number, facts: { ...back.asNew } }, returned];
};

const outWords = (standing: Standing, known: Known): Remark[] => {
  const { trip, contents } = standing;
  if (trip === null) return [];
  const late = daysOverdue(trip, known.now);
  const from = customerName(known, trip.customer);
  const since = dateWords(londonDate(trip.since), known.now);
  const remarks: Remark[] = [
    {
      says: `From ${from}, out ${count(daysOut(trip, known.now), "day")} since ${since}`,
      tone: "",
    },
  ];
  if (late > 0) remarks.push({ says: `${count(late, "day")} late`, tone: "look" });
  if (contents !== null) remarks.push({ says: `With ${brewName(known, contents.gyle)}`, tone: "" });
  return remarks;
};

const notOutWords = (standing: Standing, known: Known): Remark => {
  const { returned, held } = standing;
  if (held?.state === "scrapped") {
    const when = timeWords(held.since, known.now);
    return { says: `Scrapped ${when}. Is this the right number?`, tone: "look" };
  }
  if (returned && londonDate(returned.since) === londonDate(known.now)) {
    return { says: `Came back already at ${timeWords(returned.since, known.now)}`, tone: "look" };
  }
  const where = placeFacet(standing, known)?.says ?? "Where it was is not on record";
  return { says: `Not down as out. ${where}`, tone: "look" };
};

/** From where it comes and how long it was away; or that it was not down as out. */
export const backRemarks = (standing: Standing | null, known: Known): Remark[] => {
  if (!standing?.registered && !standing?.trip) return [];
  const remarks = standing.trip ? outWords(standing, known) : [notOutWords(standing, known)];
  if (standing.held?.state === "missing" && standing.trip) {
    remarks.push({ says: "Was down as missing", tone: "look" });
  }
  return remarks.map((remark) => ({
    ...remark,
    says: `${sentence(remark.says)}.`.replace("?.", "?"),
  }));
};
