// A head with the number of containers in it, as a pub would chalk it up.

import { bareHead } from "../parts/head-of.ts";
import type { Holding } from "./holdings.ts";

export const countedHead = ({ away }: Holding) => {
  const kegs = away.filter(({ standing }) => standing.shape === "keg").length;
  const shape = kegs > away.length / 2 ? "keg" : "cask";
  return { ...bareHead(String(away.length), shape), away: true };
};
