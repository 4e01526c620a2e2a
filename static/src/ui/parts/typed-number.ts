// What the digits on the pad mean: one container, several that fit, a run, or not enough yet.

import { bareDigits, isNumber, matches, normalNumber, runOfNumbers } from "../../domain/numbers.ts";
import type { Standing } from "../../domain/standing.ts";

type Containers = ReadonlyMap<string, Standing>;

export type Typed =
  | { is: "nothing" }
  /** Not a number yet; `says` what is missing. */
  | { is: "unfinished"; says: string }
  /** One container; standing null where the phone does not know it; others that were meant perhaps. */
  | { is: "one"; number: string; standing: Standing | null; others: string[] }
  /** Bare digits that fit several, and none of them to the letter: K12 and L12. */
  | { is: "several"; numbers: string[] }
  | { is: "run"; numbers: string[] };

/** The containers that bare digits may mean, the plain number first. */
export const fitting = (typed: string, containers: Containers): string[] => {
  const found = [...containers.keys()].filter((number) => matches(typed, number));
  return found.sort((a, b) => Number(b === typed) - Number(a === typed) || (a < b ? -1 : 1));
};

/** In a run: the number itself if known, else the only one with these digits, else as typed. */
const inRun = (number: string, containers: Containers): string => {
  if (containers.has(number)) return number;
  const found = fitting(number, containers);
  return found.length === 1 && found[0] !== undefined ? found[0] : number;
};

/** "117-24" is said for 117 to 124: a shorter end takes its front from the start. */
const endOfRun = (first: string, last: string): string =>
  /^\d+$/.test(last) && /^\d+$/.test(first) && last.length < first.length
    ? first.slice(0, first.length - last.length) + last
    : last;

const readRun = (typed: string, containers: Containers): Typed => {
  const [first = "", last = ""] = typed.split("-");
  if (!isNumber(first)) return { is: "unfinished", says: "A run needs a number to begin with." };
  if (last === "") return { is: "unfinished", says: `${first} up to which number?` };
  try {
    const numbers = runOfNumbers(first, endOfRun(first, last));
    return { is: "run", numbers: numbers.map((number) => inRun(number, containers)) };
  } catch {
    return { is: "unfinished", says: `${first} up to ${last} is not a run of 2 to 100 numbers.` };
  }
};

/** Whether this very number is a container's that is in use. */
const inUse = (standing: Standing | undefined): boolean =>
  standing?.registered != null && standing.held?.state !== "scrapped";

/** What was typed may stand for these instead: what else fits it, and the number itself. */
const oneOf = (number: string, typed: string, containers: Containers): Typed => ({
  is: "one",
  number,
  standing: containers.get(number) ?? null,
  others: isNumber(typed)
    ? [...new Set([typed, ...fitting(typed, containers)])].filter((other) => other !== number)
    : [],
});

/** Reads what stands on the pad. `chosen` is the number that was tapped where several fit. */
export const readTyped = (typed: string, containers: Containers, chosen?: string | null): Typed => {
  if (chosen != null) return oneOf(chosen, typed, containers);
  if (typed === "") return { is: "nothing" };
  if (typed.includes("-")) return readRun(typed, containers);
  if (!isNumber(typed)) return { is: "unfinished", says: "A number needs at least one digit." };
  const number = normalNumber(typed);
  const found = fitting(number, containers);
  if (inUse(containers.get(number))) return oneOf(number, number, containers);
  if (found.length > 1) return { is: "several", numbers: found };
  return oneOf(found[0] ?? number, number, containers);
};

/** Numbers that begin as typed, for a list of suggestions, nearest first. */
export const beginning = (typed: string, containers: Containers, most: number): string[] => {
  const plain = typed.toUpperCase().replace(/[^A-Z0-9]/g, "");
  if (plain === "") return [];
  const exact = new Set(fitting(plain, containers));
  const rest = [...containers.keys()]
    .filter((n) => !exact.has(n) && (n.startsWith(plain) || bareDigits(n).startsWith(plain)))
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1));
  return [...exact, ...rest].slice(0, most);
};
