// The open questions, and those of which there are many alike.

import { openQueries } from "../../../domain/queries.ts";
import type { Query, Standing } from "../../../domain/standing.ts";
import type { Known } from "../../words.ts";
import { waysOut } from "./ways.ts";

/** The same question asked of many, as a heading. */
export const RULES: { readonly [rule: string]: string } = {
  registered_twice: "Entered twice, as different things",
  filled_twice: "Filled twice on one day",
  unwashed: "Filled without a wash on record",
  filled_set_aside: "Filled while set aside",
  sent_set_aside: "Sent out while set aside",
  overfull: "Fuller than it can be",
  dip_rose: "More beer than before",
  dipped_tilted: "Dipped when tilted",
  emptied_empty: "Emptied with no beer on record",
  sent_empty: "Sent out with no beer on record",
  served_empty: "Served with no beer on record",
  sent_elsewhere: "Sent on from one customer to another",
  told_not_here: "Not there, their customers say",
  reported: "Reported by finders",
  after_scrapped: "In use after scrapping",
  impossible_time: "Noted with a wrong clock",
};

export interface Question {
  standing: Standing;
  query: Query;
}

/** All open questions, the latest first: it is the one that somebody still remembers. */
export const questions = (containers: Iterable<Standing>): Question[] => {
  const found: Question[] = [];
  for (const standing of containers) {
    if (standing.queries.length === 0) continue;
    for (const query of openQueries(standing)) found.push({ standing, query });
  }
  return found.sort((a, b) => (a.query.at < b.query.at ? 1 : a.query.at > b.query.at ? -1 : 0));
};

/** From so many alike on they are offered to be settled together. */
export const MANY_ALIKE = 3;

export interface Alike {
  rule: string;
  /** What settling them as right says. */
  label: string;
  all: Question[];
}

/** Rules of which there are many open questions: a brewery that notes no wash asks the same all day. */
export const manyAlike = (all: readonly Question[], known: Known): Alike[] => {
  const byRule = new Map<string, Question[]>();
  for (const question of all) {
    const there = byRule.get(question.query.rule);
    if (there) there.push(question);
    else byRule.set(question.query.rule, [question]);
  }
  return [...byRule]
    .filter(([, alike]) => alike.length >= MANY_ALIKE)
    .map(([rule, alike]) => ({
      rule,
      all: alike,
      label: (alike[0] && waysOut(alike[0].query, known)[0]?.label) ?? "",
    }))
    .sort((a, b) => b.all.length - a.all.length);
};
