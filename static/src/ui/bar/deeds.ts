// What can be done with a container on the stillage, most likely first.

import type { Kind } from "../../domain/entries.ts";
import type { Served } from "./lists.ts";

export type Deed = "tap" | "soft" | "hard" | "dip" | "stoop" | "off";

/**
 * Untapped casks are vented soft first, so that they can work; a spile is changed for the other
 * one. A keg has no shive to put a spile in.
 */
export const deedsFor = ({ standing, serving }: Served): Deed[] => {
  const keg = standing.shape === "keg";
  const change: Deed[] = keg ? [] : [serving.vented?.spile === "soft" ? "hard" : "soft"];
  // Tilted once it is; what it is tilted for, the last gallons, a keg gives without.
  const stoop: Deed[] = keg || serving.stooped !== null ? [] : ["stoop"];
  if (serving.tapped !== null) return ["dip", ...change, ...stoop, "off"];
  if (keg) return ["tap"];
  return serving.vented === null ? ["soft", "hard"] : ["tap", ...change];
};

/** The kind of entry that each is noted as. */
export const KIND_OF: { readonly [deed in Deed]: Kind } = {
  tap: "tapped",
  soft: "vented",
  hard: "vented",
  dip: "dipped",
  stoop: "stooped",
  off: "emptied",
};

export const deedWords = (deed: Deed, { serving }: Served): string =>
  ({
    tap: "Tap",
    dip: "Dip",
    stoop: "Stoop",
    off: "Take off",
    soft: serving.vented === null ? "Vent, soft spile" : "Soft spile",
    hard: serving.vented === null ? "Vent, hard spile" : "Hard spile",
  })[deed];

/** Why a container comes off; the words are kept in its history. */
export const WHY_OFF = ["sold out", "off", "poured away"] as const;
