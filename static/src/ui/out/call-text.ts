// The text that asks a customer for containers: the brewery's own words with the numbers put in.

import wordings from "../../../../cellarapp/domain/wordings.json";
import { londonDate } from "../../domain/calendar.ts";
import type { Customer } from "../../domain/records.ts";
import { customerName, dayWords, type Known } from "../words.ts";
import type { Holding } from "./holdings.ts";
import { nextWeekday } from "./promise.ts";
import { byKindWords } from "./reasons.ts";

export const CALL_TEXT = wordings.call_text;

/** A text with each {name} filled in. A name that means nothing stays as it was written. */
export const filledIn = (text: string, names: { readonly [name: string]: string }): string =>
  text.replace(/\{(\w+)\}/g, (whole, name: string) => names[name] ?? whole);

/** Names in braces that would not be filled in. */
export const unknownNames = (text: string, holds: readonly string[]): string[] =>
  [...text.matchAll(/\{([^{}]*)\}/g)]
    .map((found) => found[1] ?? "")
    .filter((n) => !holds.includes(n));

const deliveryWords = (record: Customer | undefined, now: string): string => {
  const day = record?.fields.delivery_day;
  const next = day === undefined ? null : nextWeekday(londonDate(now), day);
  return next === null
    ? "this week"
    : `on ${dayWords(next, now)}`.replace("on tomorrow", "tomorrow");
};

/** Who asks; a brewery that has not said its name is whoever writes. */
export interface From {
  person: string;
  brewery: string;
}

/** What the names of a text stand for at one customer. */
export const namesAt = (holding: Holding, known: Known, from: From) => {
  const { away, customer, longest, record } = holding;
  const name = customerName(known, customer);
  const late = away.filter(({ overdue }) => overdue > 0).length;
  return {
    contact: record?.fields.contact || name,
    customer: name,
    containers: byKindWords(away),
    late: late === away.length && late > 1 ? "all" : String(late),
    numbers: away.map(({ standing }) => standing.number).join(", "),
    longest: `${longest} days`,
    delivery: deliveryWords(record, known.now),
    person: from.person,
    brewery: from.brewery || from.person,
  };
};

/** Addresses that open the phone's own apps with the text in them (RFC 5724, RFC 6068). */
export const smsHref = (phone: string, text: string): string =>
  `sms:${phone.replace(/[^+0-9]/g, "")}?body=${encodeURIComponent(text)}`;

export const mailHref = (email: string, subject: string, text: string): string =>
  `mailto:${encodeURIComponent(email).replace("%40", "@")}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text)}`;
