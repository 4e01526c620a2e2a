// The next step in a container's life: the one thing that a line of the Cellar offers.

import type { Kind } from "../../domain/entries.ts";
import type { Full } from "./full.ts";

export type Next = "move" | "stillage" | "vent" | "hard" | "tap" | "bar" | "decide";

/**
 * A keg is not vented and lies on no stillage: ready, it is tapped. A cask works under a soft
 * spile first, then a hard one keeps what is left of its gas in until it is tapped.
 */
export const nextStep = ({ standing, ready, look }: Full): Next => {
  if (look === "held" || look === "past" || look === "query") return "decide";
  if (ready.stage === "conditioning") return "move";
  if (ready.stage === "on_sale") return "bar";
  if (standing.shape === "keg") return "tap";
  if (ready.stage === "stillaged") return "vent";
  if (ready.stage === "working") return standing.serving?.vented?.spile === "soft" ? "hard" : "tap";
  return "stillage";
};

/** What its button says. */
export const NEXT_WORDS: { readonly [next in Next]: string } = {
  move: "Move",
  stillage: "Stillage",
  vent: "Vent",
  hard: "Hard spile",
  tap: "Tap",
  bar: "Bar",
  decide: "Decide",
};

/** The kind of entry that each notes; those that only lead elsewhere note nothing. */
export const KIND_OF: { readonly [next in Next]: Kind | null } = {
  move: "moved",
  stillage: "stillaged",
  vent: "vented",
  hard: "vented",
  tap: "tapped",
  bar: null,
  decide: null,
};
