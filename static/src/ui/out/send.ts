// Going out: what is recorded for a number, and what to know before it leaves.

import { londonDate } from "../../domain/calendar.ts";
import { lifeLeft } from "../../domain/cellar/shelf-life.ts";
import type { Facts } from "../../domain/entries.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Customer } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { dueOn } from "../../domain/trips.ts";
import { fitOf } from "../cellar/fit.ts";
import { asFull, type Full, fitted } from "../cellar/full.ts";
import {
  brewName,
  count,
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
  settings: Settings,
): Draft[] => {
  const facts: Facts = { customer, due_on: dueOn(now, record ?? null, settings) };
  const sent: Draft = { kind: "sent", subject: number, facts };
  return standing?.registered
    ? [sent]
    : [{ kind: "registered", subject: number, facts: { ...asNew } }, sent];
};

/** As the Cellar sees it: by the brewery's own figures. */
const asInTheCellar = (standing: Standing, known: Known, settings: Settings): Full | null => {
  const here = { ...standing, trip: null };
  const full = asFull(here, known);
  return full && fitted(full, settings, known.now, () => fitOf(here, known, settings));
};

/** What is left of its life today, against what this customer expects, or customers do. */
const lifeWords = (
  { standing, ready: { best_before } }: Full,
  record: Customer | undefined,
  now: string,
  settings: Settings,
): Remark => {
  if (best_before === null) return { says: "Ready.", tone: "fine" };
  const { left_days, expected_days, short_by_days } = lifeLeft(
    {
      best_before_on: best_before,
      delivered_on: londonDate(now),
      shape: standing.shape === "keg" ? "keg" : "cask",
      expected_days: record?.fields.expected_days ?? null,
    },
    settings,
  ).result;
  const says = `Ready, best before ${dateWords(best_before, now)}: ${count(left_days, "day")} left`;
  return short_by_days === 0
    ? { says: `${says}.`, tone: "fine" }
    : { says: `${says}, and ${expected_days} are expected.`, tone: "look" };
};

const beerWords = (
  standing: Standing,
  record: Customer | undefined,
  known: Known,
  settings: Settings,
): Remark[] => {
  const full = asInTheCellar(standing, known, settings);
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
    remarks.push(lifeWords(full, record, now, settings));
  }
  if (standing.serving?.vented) remarks.push({ says: "Vented already.", tone: "look" });
  return remarks;
};

/** What is in it and whether it is ready; and what speaks against sending it. */
export const sendRemarks = (
  standing: Standing | null,
  { customer, record }: Pick<Sending, "customer" | "record">,
  known: Known,
  settings: Settings,
): Remark[] => {
  if (standing === null) return [];
  const remarks = beerWords(standing, record, known, settings);
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
