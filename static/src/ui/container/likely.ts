// Which deeds come first for a container as it stands: the next ones in its life. All others are
// there too, behind "More": what happened can always be noted (LIFE-22).

import type { Standing } from "../../domain/standing.ts";
import { DEEDS, type DeedName } from "./deeds.ts";

const inUse = (standing: Standing): DeedName[] => {
  const { trip, contents, serving, clean, shape } = standing;
  if (trip !== null) return ["back", "backFull"];
  if (contents === null) return clean?.state === "dirty" || clean === null ? ["wash"] : ["pass"];
  if (serving?.tapped) return ["dip", "empty"];
  if (shape === "keg") return ["tap", "send"];
  if (serving?.vented) return serving.vented.spile === "soft" ? ["hard", "tap"] : ["tap", "soft"];
  if (serving?.stillaged) return ["soft", "hard"];
  return ["stillage", "send"];
};

/** The one to four deeds that are likely now. */
export const likely = (standing: Standing): DeedName[] => {
  if (standing.held?.state === "scrapped") return ["enter"];
  if (standing.registered === null) return ["enter", ...inUse(standing)];
  if (standing.held?.state === "missing") return ["found", ...inUse(standing)];
  if (standing.held?.state === "set_aside") return ["release", ...inUse(standing)];
  return inUse(standing);
};

export const others = (standing: Standing): DeedName[] => {
  const first = new Set(likely(standing));
  const held = standing.held?.state;
  return (Object.keys(DEEDS) as DeedName[]).filter(
    (name) =>
      !first.has(name) &&
      (name !== "release" || held === "set_aside") &&
      (name !== "found" || held === "missing"),
  );
};
