// The inside measures of a cask, asked one by one and kept as one fact.

import type { Facts } from "../../domain/entries.ts";
import { RANGES } from "../../domain/inputs.ts";

const MEASURES = ["bung_diameter_mm", "head_diameter_mm", "length_mm"] as const;

/** All three or none, each as large as a cask can be, and the bung's the widest. */
export const wrongInside = (facts: Facts): Facts => {
  const given = MEASURES.filter((name) => facts[name] !== undefined);
  if (given.length === 0) return {};
  const faults: Facts = {};
  for (const name of MEASURES) {
    const { low, high } = RANGES[name];
    const mm = facts[name];
    if (mm === undefined) faults[name] = "All three measures, or none.";
    else if (mm < low || mm > high) faults[name] = `From ${low} to ${high} mm.`;
  }
  const [bung, head] = [facts["bung_diameter_mm"], facts["head_diameter_mm"]];
  if (Object.keys(faults).length === 0 && head > bung) {
    faults["head_diameter_mm"] = "A cask is widest at its bung.";
  }
  return faults;
};

/** The answers with the three as the ledger takes them. */
export const withInside = (facts: Facts): Facts => {
  const { bung_diameter_mm, head_diameter_mm, length_mm, ...rest } = facts;
  return bung_diameter_mm === undefined
    ? rest
    : { ...rest, inside: { bung_diameter_mm, head_diameter_mm, length_mm } };
};
