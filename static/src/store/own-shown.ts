// This phone's own entries as a screen lists them, the newest first.

import type { MadeEntry } from "../domain/entries.ts";
import type { Problem } from "./kept.ts";
import type { Own, OwnEntries } from "./own-entries.ts";

export interface OwnEntry {
  entry: MadeEntry;
  where: "phone" | "brewery" | "attention";
  savedAt: string;
  /** An own entry has voided it. */
  undone: boolean;
  /** Why it needs attention. */
  problem?: Problem;
  verdict?: "held" | "refused";
}

export const shownEntries = (own: OwnEntries): OwnEntry[] => {
  const all = [...own.all].sort((a, b) => b.n - a.n);
  const undone = voidedIn(all);
  return all.map(({ where, kept }) => {
    const shown = {
      entry: kept.entry,
      where,
      savedAt: kept.savedAt,
      undone: undone.has(kept.entry.id),
    };
    return "problem" in kept ? { ...shown, problem: kept.problem, verdict: kept.verdict } : shown;
  });
};

/** Newest first, so a void is met before its target: one that is itself void does not count. */
const voidedIn = (newestFirst: readonly Own[]): Set<string> => {
  const voided = new Set<string>();
  for (const { where, kept } of newestFirst) {
    const { id, kind, facts } = kept.entry;
    if (kind === "voided" && where !== "attention" && !voided.has(id)) voided.add(facts["target"]);
  }
  return voided;
};
