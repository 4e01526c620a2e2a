// From a standing to what its head looks like.

import type { Standing } from "../../domain/standing.ts";
import type { HeadLook } from "./Head.tsx";

/** The plain head of a container of which only the number is known, or a number still typed. */
export const bareHead = (label: string, shape: "cask" | "keg" = "cask"): HeadLook => ({
  label,
  shape,
  level: 0,
  ring: null,
  spile: null,
  tapped: false,
  away: false,
  stopped: false,
});

/** A full cask still shows a little steel above its beer. */
const FULL = 0.95;

const ringOf = (since: string, bestBefore: string | null, now: string): number | null => {
  if (bestBefore === null) return null;
  const end = Date.parse(`${bestBefore}T23:59Z`);
  const whole = end - Date.parse(since);
  return whole <= 0 ? 0 : Math.min(1, Math.max(0, (end - Date.parse(now)) / whole));
};

export const headOf = (standing: Standing, now: string): HeadLook => {
  const { contents, serving, held } = standing;
  const keg = standing.shape === "keg"; // it has no shive to put a spile in
  const capacity = standing.capacity_ml ?? contents?.volume_ml ?? 0;
  return {
    label: standing.number,
    shape: keg ? "keg" : "cask",
    level: contents === null || capacity === 0 ? 0 : Math.min(FULL, contents.left_ml / capacity),
    ring: contents === null ? null : ringOf(contents.since, contents.best_before, now),
    spile: serving?.vented && !keg ? (serving.vented.spile ?? "unknown") : null,
    tapped: serving?.tapped != null,
    away: standing.trip !== null || held?.state === "missing",
    stopped: held?.state === "set_aside" || held?.state === "scrapped",
  };
};
