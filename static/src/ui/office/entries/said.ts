// An own entry in words, and what the brewery said of it.

import { isNumber } from "../../../domain/numbers.ts";
import type { OwnEntry } from "../../../store/book.ts";
import { entryWords } from "../../words/entries.ts";
import { customerName, type Known } from "../../words.ts";
import { factProblems } from "./repair.ts";

/** "117: Filled with 40.9 L of …"; records are named by what they set. */
export const ownTitle = ({ entry }: OwnEntry, known: Known): string => {
  const words = entryWords(entry, known);
  if (isNumber(entry.subject)) return `${entry.subject}: ${words}`;
  return entry.kind === "chased" ? `${customerName(known, entry.subject)}: ${words}` : words;
};

const stopped = (words: string): string => (/[.?!]$/.test(words) ? words : `${words}.`);

/** What was said of single facts says more than the words about the whole. */
const detailsOf = (own: OwnEntry): string[] => {
  const facts = factProblems(own).map(({ label, says }) =>
    label === "" ? says : `${label}: ${says.replace(/^./, (first) => first.toLowerCase())}`,
  );
  return facts.length > 0 ? facts : [own.problem?.detail ?? own.problem?.title ?? ""];
};

/** Why it needs attention, with every single fault that was named. */
export const problemWords = (own: OwnEntry): string =>
  [leadOf(own), ...detailsOf(own).filter(Boolean).map(stopped)].join(" ").trimStart();

const leadOf = ({ verdict, problem }: OwnEntry): string => {
  // Somebody has looked at it, and the details say so.
  if (problem?.type?.endsWith("/put-aside")) return "";
  return verdict === "held"
    ? "The brewery keeps this for a person to look at."
    : "The brewery could not take this.";
};
