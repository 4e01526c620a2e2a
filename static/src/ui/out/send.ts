// Going out: what is recorded for a number, and what to know before it leaves.

import type { Facts } from "../../domain/entries.ts";
import type { Customer } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { dueOn } from "../../domain/trips.ts";
import { asFull } from "../cellar/full.ts";
import {
  brewName,
  customerName,
  dateWords,
  heldFacet,
  type Known,
  litres,
  timeWords,
} from "../words.ts";
import type { Draft, Remark } from "./back.ts";

export interface Sending {
  customer: string;
  record: Customer | undefined;
  asNew: { kind: string; capacity_ml: number | null };
}

export const sendDrafts = (
  number: string,
  standing: Standing | null,
  { customer, record, asNew }: Sending,
  now: string,
): Draft[] => {
  const facts: Facts = { customer, due_on: dueOn(now, record ?? null) };
  const sent: Draft = { kind: "sent", subject: number, facts };
  return standing?.registered
    ? [sent]
    : [{ kind: "registered", subject: number, facts: { ...asNew } }, sent];
};

const beerWords = (standing: Standing, known: Known): Remark[] => {
  const full = asFull({ ...standing, trip: null }, known);
  if (full === null) return [{ says: "No beer on record in it.", tone: "look" }];
  const { contents, ready } = full;
  const { now } = known;
  const what = `${brewName(known, contents.gyle)}, ${litres(contents.left_ml)}`;
  const remarks: Remark[] = [{ says: `${what}.`, tone: "" }];
  if (ready.stage === "past") {
    const best = ready.best_before;
    const when = best === null ? "" : ` (${dateWords(best, now)})`;
    remarks.push({ says: `Past its time${when}.`, tone: "look" });
  } else if (ready.ready_at !== null && ready.ready_at > now) {
    remarks.push({ says: `Not ready until ${timeWords(ready.ready_at, now)}.`, tone: "look" });
  } else {
    const best =
      ready.best_before === null ? "" : `, best before ${dateWords(ready.best_before, now)}`;
    remarks.push({ says: `Ready${best}.`, tone: "fine" });
  }
  if (standing.serving?.vented) remarks.push({ says: "Vented already.", tone: "look" });
  return remarks;
};

/** What is in it and whether it is ready; and what speaks against sending it. */
export const sendRemarks = (
  standing: Standing | null,
  customer: string,
  known: Known,
): Remark[] => {
  if (standing === null) return [];
  const remarks = beerWords(standing, known);
  const held = heldFacet(standing, known);
  if (held !== null) remarks.push({ says: `${held.says}.`, tone: "look" });
  if (standing.trip !== null) {
    const there = customerName(known, standing.trip.customer);
    const same = standing.trip.customer === customer;
    remarks.push({
      says: same ? `Down as out at ${there} already.` : `Still down as out at ${there}.`,
      tone: "look",
    });
  }
  return remarks;
};
