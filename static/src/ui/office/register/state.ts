// Where a container stands, in one word, for the register's filter.

import { isNumber } from "../../../domain/numbers.ts";
import type { Standing } from "../../../domain/standing.ts";

export const STATES = {
  empty: "Empty",
  full: "Full",
  serving: "On the stillage",
  out: "Out",
  held: "Set aside or missing",
  unknown: "Not registered",
  scrapped: "Scrapped",
} as const;

export type State = keyof typeof STATES;

/** The first that holds, from what takes it out of use to what it is used for. */
export const stateOf = (standing: Standing): State => {
  if (standing.held?.state === "scrapped") return "scrapped";
  if (standing.registered === null) return "unknown";
  if (standing.held !== null) return "held";
  if (standing.trip !== null) return "out";
  if (standing.serving !== null && standing.contents !== null) return "serving";
  return standing.contents === null ? "empty" : "full";
};

/** Whether it was ever in hand. A number that a stranger misread, or an undone slip, is none of ours. */
const isOurs = ({ registered, place, contents, clean, held, trip, returned }: Standing): boolean =>
  [registered, place, contents, clean, held, trip, returned].some((facet) => facet !== null);

export interface Wanted {
  words: string;
  kind: string;
  state: State | "";
}

const plain = (text: string): string => text.toUpperCase().replace(/[^A-Z0-9]/g, "");

/** Scrapped ones are shown when asked for only. */
const wanted =
  ({ words, kind, state }: Wanted) =>
  (standing: Standing): boolean => {
    if (!isOurs(standing) || (kind !== "" && standing.kind !== kind)) return false;
    const is = stateOf(standing);
    if (state === "" ? is === "scrapped" && words === "" : is !== state) return false;
    const typed = plain(words);
    if (typed === "") return true;
    return standing.number.includes(typed) || plain(standing.owner ?? "").includes(typed);
  };

const order = new Intl.Collator("en-GB", { numeric: true });

/** By number as people count: 9 before 10, K2 before K12. */
export const register = (containers: Iterable<Standing>, what: Wanted): Standing[] =>
  [...containers].filter(wanted(what)).sort((a, b) => order.compare(a.number, b.number));

/** A number typed in full stands first, whatever else has it as a part. */
export const exactFirst = (found: Standing[], words: string): Standing[] => {
  const typed = plain(words);
  if (!isNumber(typed)) return found;
  const exact = found.filter(({ number }) => number === typed);
  return exact.length === 0 ? found : [...exact, ...found.filter((s) => s.number !== typed)];
};
