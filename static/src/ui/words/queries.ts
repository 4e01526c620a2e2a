// What is odd about a container, in one sentence, and what each way out would mean.

import type { Facts } from "../../domain/entries.ts";
import type { Query } from "../../domain/standing.ts";
import { litres } from "./amounts.ts";
import { doneWords } from "./done.ts";
import type { Known } from "./known.ts";
import { brewName, customerName, kindWords } from "./names.ts";
import { timeWords } from "./time.ts";

const SENTENCES: { [rule: string]: (facts: Facts, known: Known, at: string) => string } = {
  registered_twice: (f) =>
    `One number on two containers? It was entered as a ${kindWords(f.first_kind)}, then as a ${kindWords(f.second_kind)}.`,
  filled_twice: (f, known) =>
    f.first_gyle === f.second_gyle
      ? `Filled twice on one day from ${brewName(known, f.second_gyle)}. One of the two may be another number.`
      : `Filled twice on one day: from ${brewName(known, f.first_gyle)}, then from ${brewName(known, f.second_gyle)}. Which is in it?`,
  unwashed: (f, known, at) =>
    f.since === at
      ? "Filled without a wash on record since the beer before."
      : `Filled without a wash on record; it was down as dirty since ${timeWords(f.since, known.now)}.`,
  filled_set_aside: (f) => `Filled while it was set aside${because(f.why)}.`,
  sent_set_aside: (f) => `Sent out while it was set aside${because(f.why)}.`,
  overfull: (f) => `${litres(f.volume_ml)} is more than the ${litres(f.capacity_ml)} it holds.`,
  dip_rose: (f) =>
    `The dip says ${litres(f.now_ml)}, but only ${litres(f.before_ml)} was left before it.`,
  dipped_tilted: () =>
    "Litres were read off a wet dip after it was tilted, when a dip tells nothing.",
  emptied_empty: () => "Noted as emptied, but no beer was on record in it.",
  served_empty: (f) => `${doneWords(f.did)}, but no beer was on record in it.`,
  sent_empty: () => "Sent to a customer, but no beer was on record in it.",
  sent_elsewhere: (f, known) =>
    `Sent to ${customerName(known, f.second_customer)} while still down as at ${customerName(known, f.first_customer)}.`,
  told_not_here: (f, known) =>
    `${customerName(known, f.customer)} says that it is not there, but it is down as sent to them.`,
  reported: (f) =>
    `A finder says where it is: ${f.where}.${quoted(f.words)}${f.name || f.phone ? ` From ${[f.name, f.phone].filter(Boolean).join(", ")}.` : ""}`,
  after_scrapped: (f) => `${doneWords(f.did)} after it was scrapped.`,
  impossible_time: (f, known) =>
    `The phone's clock was wrong: it said ${timeWords(f.happened_at, known.now)}. The time of arrival stands instead.`,
};

const quoted = (words: unknown): string => (words === "" ? "" : ` “${words}”.`);

const because = (why: unknown): string =>
  typeof why === "string" && why !== "" ? ` (${why})` : "";

/** What is odd, in a sentence. */
export const queryWords = (query: Query, known: Known): string =>
  SENTENCES[query.rule]?.(query.facts, known, query.at) ??
  "Something about it does not fit together. See its history.";
