// The ways out of a question, in words for the buttons. Which is chosen is itself an entry, and
// can be undone like any other.

import type { Query } from "../../../domain/standing.ts";
import { customerName, doneWords, gyleName, type Known, kindName, sentence } from "../../words.ts";

export type Way =
  | { is: "right"; label: string }
  | { is: "void"; label: string; target: string }
  /** Asks for the number it was. */
  | { is: "renumber"; label: string; target: string };

type Naming = (facts: Query["facts"], known: Known) => string[];

/** What each of the entries that quarrel did, as the middle of a sentence, in their order. */
const DEEDS: { readonly [rule: string]: Naming } = {
  registered_twice: (f) => [
    `entering it as a ${kindName(f.first_kind).toLowerCase()}`,
    `entering it as a ${kindName(f.second_kind).toLowerCase()}`,
  ],
  filled_twice: (f, known) =>
    f.first_gyle === f.second_gyle
      ? ["the first fill", "the second fill"]
      : [
          `the fill from ${gyleName(known, f.first_gyle)}`,
          `the fill from ${gyleName(known, f.second_gyle)}`,
        ],
  unwashed: () => ["the fill"],
  filled_set_aside: () => ["setting it aside", "the fill"],
  sent_set_aside: () => ["setting it aside", "sending it out"],
  dip_rose: () => ["what was noted before", "the last dip"],
  dipped_tilted: () => ["the tilting", "the dip"],
  emptied_empty: () => ["the emptying"],
  sent_empty: () => ["sending it out"],
  sent_elsewhere: (f, known) => [
    `sending it to ${customerName(known, f.first_customer)}`,
    `sending it to ${customerName(known, f.second_customer)}`,
  ],
  told_not_here: (f, known) => [
    `sending it to ${customerName(known, f.customer)}`,
    "what they say",
  ],
  served_empty: (f) => [`"${doneWords(f.did)}"`],
  after_scrapped: (f) => ["scrapping it", `"${doneWords(f.did)}"`],
};

const RIGHT: { readonly [rule: string]: string } = {
  registered_twice: "The later entry is right",
  filled_set_aside: "It was filled all the same",
  sent_set_aside: "It went out all the same",
  emptied_empty: "It was emptied all the same",
  sent_empty: "It went out empty",
  served_empty: "There was beer in it",
  told_not_here: "They have it all the same",
  reported: "It is seen to",
  after_scrapped: "It is still in use",
  filled_twice: "Both are right: the last fill is in it",
  unwashed: "It was clean",
  sent_elsewhere: "Both are right: it went from one to the other",
  dip_rose: "The last dip is right",
  dipped_tilted: "The dip is right all the same",
  overfull: "It does hold that much",
  impossible_time: "The time of arrival will do",
};

/** Of a report there is more to say than that it never was. */
const VOID: { readonly [rule: string]: string } = { reported: "It is of no use" };
const RENUMBER: { readonly [rule: string]: string } = { reported: "It was another number" };

const deedsOf = (query: Query, known: Known): string[] => {
  const named = DEEDS[query.rule]?.(query.facts, known) ?? [];
  return query.entries.map((_, at) => named[at] ?? "what was noted");
};

/** Where it is only a matter of time or size, another number would not explain anything. */
const ONE_CONTAINER = new Set(["registered_twice", "impossible_time"]);

export const waysOut = (query: Query, known: Known): Way[] => {
  const deeds = deedsOf(query, known);
  const voids = query.entries.map<Way>((target, at) => ({
    is: "void",
    target,
    label: VOID[query.rule] ?? `${sentence(deeds[at] ?? "")} never happened`,
  }));
  const renumbers = query.entries.map<Way>((target, at) => ({
    is: "renumber",
    target,
    label: RENUMBER[query.rule] ?? `${sentence(deeds[at] ?? "")} was another number`,
  }));
  return [
    { is: "right", label: RIGHT[query.rule] ?? "It is right as it stands" },
    ...voids,
    ...(ONE_CONTAINER.has(query.rule) ? [] : renumbers),
  ];
};
