// Many numbers at once, as somebody reads them off a pallet: "117-124, 130, K3".

import { normalNumber, runOfNumbers } from "../../../domain/numbers.ts";

/** A fleet is entered once, and in long runs. */
export const MOST_ENTERED = 300;

/** What was typed, as far as it can be a number: "f 117" is "F117". Not judged yet. */
export const plainNumber = (text: string): string => text.toUpperCase().replace(/[\s.-]+/g, "");

export interface ReadNumbers {
  numbers: string[];
  /** What could not be read, in the words it was typed. */
  unread: string[];
}

const readOne = (part: string): string[] | null => {
  const [first = "", last, ...rest] = part.split(/\s*(?:-|–|\bto\b)\s*/i);
  if (rest.length > 0) return null;
  try {
    // "K-12" is one number with a dash in it: a run begins with a number.
    if (!/\d/.test(first)) return [normalNumber(part)];
    const from = normalNumber(first);
    return last === undefined ? [from] : runOfNumbers(from, normalNumber(last), MOST_ENTERED);
  } catch {
    return null;
  }
};

/** Commas, semicolons and new lines part them; each number counts once. */
export const readNumbers = (text: string): ReadNumbers => {
  const numbers = new Set<string>();
  const unread: string[] = [];
  for (const part of text.split(/[,;\n]+/).map((p) => p.trim())) {
    if (part === "") continue;
    const found = readOne(part);
    if (found === null) unread.push(part);
    else for (const number of found) numbers.add(number);
  }
  return { numbers: [...numbers], unread };
};
