// What a customer has asked for: so many of a beer in a kind of container. A container of another
// beer is warned of before it goes on the van.

import type { DropAsked } from "../../../domain/record-fields.ts";
import type { Standing } from "../../../domain/standing.ts";
import { type Known, listWords, text } from "../../words.ts";
import type { Remark } from "../back.ts";
import { manyOf } from "../reasons.ts";

type Standings = ReadonlyMap<string, Standing>;

const beerIn = (standing: Standing | null | undefined, known: Known): string =>
  text(known.gyles.get(standing?.contents?.gyle ?? ""), "beer");

const is = (standing: Standing | undefined, { beer, kind }: DropAsked, known: Known): boolean =>
  beerIn(standing, known) === beer && standing?.kind === kind;

export const madeUpOf = (
  line: DropAsked,
  numbers: readonly string[],
  standings: Standings,
  known: Known,
): number => numbers.filter((number) => is(standings.get(number), line, known)).length;

/** "2 firkins of Oystercatcher". */
export const askedWords = ({ beer, kind, count }: DropAsked, known: Known): string =>
  `${manyOf(kind, count)} of ${text(known.beers.get(beer), "name") || "a beer not known here"}`;

/** What speaks against a container: another beer, another size, or enough of it already. */
export const askedRemarks = (
  standing: Standing | null,
  asked: readonly DropAsked[],
  numbers: readonly string[],
  standings: Standings,
  known: Known,
): Remark[] => {
  if (standing?.contents == null || asked.length === 0) return [];
  const ofBeer = asked.filter(({ beer }) => beer === beerIn(standing, known));
  const line = ofBeer.find(({ kind }) => kind === standing.kind);
  const all = listWords(asked.map((one) => askedWords(one, known)));
  if (line === undefined) {
    const what = ofBeer.length === 0 ? "Another beer" : "Another size";
    return [{ says: `${what}: they asked for ${all}.`, tone: "look" }];
  }
  const others = numbers.filter((number) => number !== standing.number);
  if (madeUpOf(line, others, standings, known) < line.count) return [];
  return [{ says: `Enough already: they asked for ${askedWords(line, known)}.`, tone: "look" }];
};

/** The lines with one changed or added; none asked for leaves the line out. */
export const withAsked = (asked: readonly DropAsked[], line: DropAsked): DropAsked[] => {
  const others = asked.filter(({ beer, kind }) => beer !== line.beer || kind !== line.kind);
  return line.count === 0 ? others : [...others, line];
};

const WHOLE = /^\d{1,2}$/;

/** What is wrong with a line as it was typed, in words; null when nothing is. */
export const askedFault = (beer: string, kind: string, typed: string): string | null => {
  if (beer === "" || kind === "") return "Choose a beer and a size.";
  return WHOLE.test(typed.trim()) && Number(typed) > 0 ? null : "How many? A whole figure.";
};
