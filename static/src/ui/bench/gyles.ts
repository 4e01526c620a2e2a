// The gyles that can be racked, and how far one has come.

import type { Gyle } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { count, kindWords } from "../words.ts";

/** What is left of a gyle, mL; below nought when more was drawn than it had; null if not known. */
export const leftMl = (gyle: Gyle | undefined): number | null =>
  gyle?.fields.volume_ml === undefined ? null : gyle.fields.volume_ml - gyle.drawn_ml;

/** Gyles in use, the newest brew first. */
export const openGyles = (gyles: ReadonlyMap<string, Gyle>): [string, Gyle][] =>
  [...gyles]
    .filter(([, gyle]) => !gyle.fields.retired)
    .sort(([, a], [, b]) => ((a.fields.brewed_on ?? "") < (b.fields.brewed_on ?? "") ? 1 : -1));

/** The containers that hold it now, in words: "12 firkins filled", "12 containers filled". */
export const holdingWords = (gyle: string, containers: ReadonlyMap<string, Standing>): string => {
  const kinds = new Set<string>();
  let filled = 0;
  for (const { contents, kind } of containers.values()) {
    if (contents?.gyle !== gyle) continue;
    kinds.add(kindWords(kind));
    filled += 1;
  }
  if (filled === 0) return "none filled yet";
  const [only = "container"] = kinds.size === 1 ? kinds : [];
  return /^\d/.test(only) ? `${filled} × ${only} filled` : `${count(filled, only)} filled`;
};
