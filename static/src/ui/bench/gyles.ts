// The gyles that can be racked, and how far one has come.

import { addDays, londonDate } from "../../domain/calendar.ts";
import { CONTAINER_KINDS } from "../../domain/containers.ts";
import type { Gyle } from "../../domain/records.ts";
import type { Standing } from "../../domain/standing.ts";
import { count, kindWords, litres } from "../words.ts";

/** What is left of a gyle, mL; below nought when more was drawn than it had; null if not known. */
export const leftMl = (gyle: Gyle | undefined): number | null =>
  gyle?.fields.volume_ml === undefined ? null : gyle.fields.volume_ml - gyle.drawn_ml;

/** That so much is not there, before it is noted as filled; "" where it is, or nobody knows. */
export const shortWords = (gyle: Gyle | undefined, ml: number): string => {
  const left = leftMl(gyle);
  if (left === null || ml <= left) return "";
  return `${litres(Math.max(0, left))} left of this gyle: ${litres(ml - Math.max(0, left))} short.`;
};

/** Gyles in use, the newest brew first. */
export const openGyles = (gyles: ReadonlyMap<string, Gyle>): [string, Gyle][] =>
  [...gyles]
    .filter(([, gyle]) => !gyle.fields.retired)
    .sort(([, a], [, b]) => ((a.fields.brewed_on ?? "") < (b.fields.brewed_on ?? "") ? 1 : -1));

/** A brew that still stands in its vessel after so many days has been racked or run off. */
const RACKED_WITHIN_DAYS = 56;

const SMALLEST_ML = Math.min(
  ...Object.values(CONTAINER_KINDS).map(({ capacity_ml }) => capacity_ml ?? Number.MAX_VALUE),
);

/** There may be a container's worth left of it: less is what stays in the vessel. */
const toRack = (gyle: Gyle, earliest: string): boolean =>
  (leftMl(gyle) ?? SMALLEST_ML) >= SMALLEST_ML && (gyle.fields.brewed_on ?? earliest) >= earliest;

/** Gyles in use, in two lists: those with beer left to rack, and the older ones. */
export const gylesToRack = (
  gyles: ReadonlyMap<string, Gyle>,
  now: string,
): { toRack: [string, Gyle][]; older: [string, Gyle][] } => {
  const earliest = addDays(londonDate(now), -RACKED_WITHIN_DAYS);
  const all = openGyles(gyles);
  return {
    toRack: all.filter(([, gyle]) => toRack(gyle, earliest)),
    older: all.filter(([, gyle]) => !toRack(gyle, earliest)),
  };
};

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
