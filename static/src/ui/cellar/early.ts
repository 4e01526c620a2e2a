// A container that is tapped before its time. Nothing refuses that, and nobody should learn it from
// the first pint.

import type { Settings } from "../../domain/figures.ts";
import { readiness } from "../../domain/readiness.ts";
import type { Standing } from "../../domain/standing.ts";
import { beerDoc, type Known, timeWords } from "../words.ts";
import { type Fit, fitOf, isEstimate } from "./fit.ts";

/** The rest after tapping is still to come whenever it is tapped, and so it is no sign of haste. */
const tappedTooSoon = ({ result: { reasons } }: Fit, now: string): boolean => {
  const sale = reasons.find((reason) => reason.of === "ready_from_at");
  const { conditioning_until_at, temperature_until_at, settling_until_at, venting_until_at } =
    sale?.facts ?? {};
  const before = [conditioning_until_at, temperature_until_at, settling_until_at, venting_until_at];
  return before.some((until) => until != null && until > now);
};

/** " Early: it conditions until Fri 10:00." after what is said of the tap; "" where it is time. */
export const earlyWords = (standing: Standing, known: Known, settings: Settings): string => {
  const { contents, planned, shape } = standing;
  if (contents === null) return "";
  const { now } = known;
  // Picked for a sale to come, it is not drawn from before.
  const drawnAt = planned !== null && planned.sale_at > now ? planned.sale_at : now;
  const { ready_at } = readiness(standing, beerDoc(known, contents.gyle), now, settings);
  if (ready_at !== null && ready_at > drawnAt) {
    return ` Early: it conditions until ${timeWords(ready_at, now)}.`;
  }
  const fit = shape === "keg" ? null : fitOf(standing, known, settings);
  if (fit === null || fit.result.ready_from_at <= drawnAt || !tappedTooSoon(fit, now)) return "";
  const about = isEstimate(fit, "ready_from_at") ? "about " : "";
  return ` Early: it can be sold from ${about}${timeWords(fit.result.ready_from_at, now)}.`;
};
