/** COND: from when a container has conditioned. Twin of cellarapp/domain/cellar/conditioning.py. */
import type { Working } from "../working.ts";
import { speed } from "./ageing.ts";
import { afterDays } from "./days.ts";
import { airAt, type History, pieces } from "./temperatures.ts";
import { atMs, hoursBetween, hoursMs, msOf } from "./times.ts";
import { DAY_HOURS } from "./units.ts";

/** The Q10 with which temperature does not count. */
const BY_THE_DAYS = 1;

export interface Conditioned {
  at: string;
  by: "days" | "temperature";
}

/**
 * COND-3: the time, and how it was reckoned. By days it is the same time on a London clock; a
 * brewery that sets a Q10 lets warm days count for more, and after now the air stays as it is.
 */
export function conditionedAt(
  work: Working,
  filledAt: string,
  days: number,
  history: History,
  now: string,
): Conditioned {
  const q10 = work.setting("conditioning_q10");
  if (q10 === BY_THE_DAYS) return { at: afterDays(filledAt, days), by: "days" };
  work.caution("conditioning_rate_is_guess");
  const referenceC = work.setting("conditioning_reference_c");
  const [coldest = 0, warmest = 0] = work.settingList("conditioning_counts_between_c");
  const rate = (airC: number): number =>
    speed(q10, Math.min(Math.max(airC, coldest), warmest), referenceC);
  let left = days * DAY_HOURS;
  const start = msOf(filledAt);
  const last = Math.max(start, msOf(now));
  for (const piece of pieces(work, history, start, last)) {
    const done = hoursBetween(piece.fromMs, piece.untilMs) * rate(piece.airC);
    if (left <= done) {
      return { at: atMs(piece.fromMs + hoursMs(left / rate(piece.airC))), by: "temperature" };
    }
    left -= done;
  }
  const { airC } = airAt(work, history, last);
  return { at: atMs(last + hoursMs(left / rate(airC))), by: "temperature" };
}
