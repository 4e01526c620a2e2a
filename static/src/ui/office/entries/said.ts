// An own entry in words, and what the brewery said of it.

import { isNumber } from "../../../domain/numbers.ts";
import type { OwnEntry } from "../../../store/book.ts";
import { customerName, entryWords, type Known } from "../../words.ts";

/** "117: Filled with 40.9 L of …"; records are named by what they set. */
export const ownTitle = ({ entry }: OwnEntry, known: Known): string => {
  const words = entryWords(entry, known);
  if (isNumber(entry.subject)) return `${entry.subject}: ${words}`;
  return entry.kind === "chased" ? `${customerName(known, entry.subject)}: ${words}` : words;
};

/** Why it needs attention, with every single fault that was named. */
export const problemWords = ({ problem, verdict }: OwnEntry): string => {
  const details = [
    problem?.detail ?? problem?.title ?? "",
    ...(problem?.errors ?? []).map((e) => e.detail ?? ""),
  ];
  const said = [...new Set(details.map((words) => words.trim()).filter(Boolean))];
  const lead =
    verdict === "held"
      ? "The brewery keeps this for a person to look at."
      : "The brewery could not take this.";
  return [lead, ...said.map((words) => (/[.?!]$/.test(words) ? words : `${words}.`))].join(" ");
};
