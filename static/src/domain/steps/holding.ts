/** Kept out of use, and words: set aside, released, scrapped, settled, noted. Twin of cellarapp/domain/steps/holding.py. */
import { hold } from "../checks.ts";
import { lapse, WHEREABOUTS } from "../queries.ts";
import type { Settlement } from "../standing.ts";
import type { StepOf } from "./step.ts";

export const setAside: StepOf = (standing, entry) => {
  hold(standing, entry, "set_aside");
  return [];
};

export const released: StepOf = (standing) => {
  if (standing.held?.state === "set_aside") standing.held = null;
  return [];
};

export const scrapped: StepOf = (standing, entry) => {
  hold(standing, entry, "scrapped");
  standing.contents = null;
  standing.serving = null;
  standing.planned = null;
  standing.trip = null;
  lapse(standing);
  lapse(standing, WHEREABOUTS);
  return [];
};

export const wordsOnly: StepOf = () => [];

export const settled: StepOf = (standing, entry) => {
  const { query, way, replaces = [] } = entry.facts;
  const kept: Settlement[] = standing.settlements[query] ?? [];
  const both = [...kept, { entry: entry.id, way, replaces }];
  both.sort((a, b) => (a.entry < b.entry ? -1 : 1));
  standing.settlements = { ...standing.settlements, [query]: both };
  return [];
};
