// What a brewery that has just begun still has to enter, so that a first cask can be filled.

import type { Section } from "./sections.ts";

type Kind = "beers" | "places" | "containers" | "gyles";

/** In the order in which they are entered: a gyle is of a beer. A form leads on to what comes next. */
const STEPS: readonly (Section & { lacks: Kind })[] = [
  {
    lacks: "containers",
    path: "lists",
    title: "Your lists",
    says: "if casks and customers stand in a spreadsheet, bring it in",
  },
  {
    lacks: "beers",
    path: "beers/new/office",
    title: "Your first beer",
    says: "its name is enough, the rest can follow",
  },
  {
    lacks: "places",
    path: "places",
    title: "Places",
    says: "cold room, stillage, bar and yard, at one touch",
  },
  {
    lacks: "containers",
    path: "containers/new",
    title: "Containers",
    says: "whole runs of numbers here, or each one when it is first filled",
  },
  {
    lacks: "gyles",
    path: "gyles/new/bench",
    title: "The gyle to rack",
    says: "then it can be filled at the Bench",
  },
];

/** A phone that has not heard from the brewery yet does not know what is lacking there. */
export const firstSteps = (
  heard: boolean,
  onRecord: { readonly [kind in Kind]: ReadonlyMap<string, unknown> },
): Section[] => (heard ? STEPS.filter(({ lacks }) => onRecord[lacks].size === 0) : []);
