/** FIT: why each time is what it is: ids, facts and a sentence. Twin of cellarapp/domain/cellar/reasons.py. */
import { halfUp } from "../rounding.ts";
import type { Cask } from "./cask.ts";
import { type Cause, ESTIMATED, heldBy, isEstimate, type Outlook } from "./outlook.ts";
import { atMs, plain, sayAt, sayDay } from "./times.ts";
import { REASONS } from "./timing.ts";
import { HOUR_MS } from "./units.ts";

/** Counted from what was noted and the brewery's hours and days, or an estimate. */
export type Sure = "counted" | "estimate";

/** Why a time is what it is: an id and facts for a screen's own words, and ours in English. */
export interface Reason {
  of:
    | "conditioned_from_at"
    | "cool_from_at"
    | "settled_from_at"
    | "ready_from_at"
    | "best_until_at"
    | "off_by_at";
  reason: string;
  sure: Sure;
  facts: Record<string, unknown>;
  says: string;
}

const HELD_BACK_BY: Record<Cause, string> = {
  conditioning: "it conditions until {at}",
  temperature: "its beer comes to the cellar's temperature {at}",
  settling: "it settles until {at}",
  steps: "it takes that long from the stillage to the glass",
  venting: "it works after venting until {at}",
  tapping: "it rests after tapping until {at}",
};

/** What the sale waits for, in words. */
export function heldBack(seen: Outlook): string {
  const { cause, until } = heldBy(seen);
  const says = HELD_BACK_BY[cause].replace("{at}", sayAt(atMs(until)));
  const follows = (cause === "conditioning" || cause === "temperature") && until < seen.steps.sale;
  return follows ? `${says}, and is vented and tapped after that` : says;
}

const sureOf = (estimate: boolean): Sure => (estimate ? "estimate" : "counted");

/** Why it has conditioned from then on. */
export function conditionedReason(cask: Cask, seen: Outlook): Reason {
  const days = cask.conditioningDays;
  const { at, by } = seen.conditioned;
  let says = `Racked ${sayAt(cask.filledAt)}, ${days} days of conditioning`;
  if (by === "temperature") says += ", warm days counting for more and cold ones for less";
  return {
    of: "conditioned_from_at",
    reason: `by_${by}`,
    sure: sureOf(by === "temperature"),
    facts: { filled_at: cask.filledAt, days },
    says: `${says}: conditioned from ${sayAt(at)}.`,
  };
}

/** Why its beer is at the cellar's temperature from then on. */
export function coolReason(seen: Outlook, coolAt: string): Reason {
  const beerC = halfUp(seen.course.beerC, 1);
  const airC = halfUp(seen.air.airC, 1);
  const here = `The beer is at about ${plain(beerC)} °C in air of ${plain(airC)} °C`;
  const there = "at the cellar's temperature";
  const at = sayAt(coolAt);
  const hours = plain(halfUp((seen.limits.coolAfterStillage ?? 0) / HOUR_MS, 1));
  const says = {
    not_needed: "A keg is cooled on its way to the tap.",
    in_range_since: `${here}: ${there} since ${at}.`,
    in_range_by_estimate: `${here}: ${there} since about ${at}.`,
    coming_into_range: `${here}: ${there} from ${at}.`,
    cellar_out_of_range: `${here}, too far off to serve: put right now, ${there} from ${at}.`,
    after_stillage: `${here}: ${there} ${hours} hours after stillage, ${at} at the earliest.`,
  }[seen.temperature];
  return {
    of: "cool_from_at",
    reason: seen.temperature,
    sure: sureOf(ESTIMATED.includes(seen.temperature)),
    facts: { beer_temp_c: beerC, air_temp_c: airC, air_known_by: seen.air.how },
    says,
  };
}

/** Why it has settled from then on. */
export function settledReason(cask: Cask, seen: Outlook): Reason {
  const hours = seen.gaps.settle / HOUR_MS;
  const settledAt = atMs(seen.reasons.settling);
  const fined = cask.fined ? "fined" : "not fined";
  const facts = { hours, fined: cask.fined, stillaged_at: cask.stillagedAt };
  const counted = { of: "settled_from_at", sure: "counted" } as const;
  if (cask.shape === "keg") {
    return { ...counted, reason: "keg", facts, says: "A keg has nothing to settle." };
  }
  const settles = `${fined}, it settles ${plain(hours)} hours`;
  if (cask.stillagedAt === null) {
    const says = `Not on the stillage yet; ${settles}: if set there now, settled from ${sayAt(settledAt)}.`;
    return { ...counted, reason: "if_stillaged_now", facts, says };
  }
  const sinceAt = atMs(seen.reasons.settling - seen.gaps.settle);
  const why = sinceAt === cask.stillagedAt ? "stillaged" : "disturbed";
  const begun = why === "stillaged" ? "On the stillage" : "Fined or moved";
  const says = `${begun} since ${sayAt(sinceAt)}; ${settles}: settled from ${sayAt(settledAt)}.`;
  return { ...counted, reason: why, facts: { ...facts, since_at: sinceAt }, says };
}

/** What the sale waits for. */
export function readyReason(seen: Outlook): Reason {
  const facts = REASONS.map((name) => [`${name}_until_at`, atMs(seen.reasons[name])]);
  return {
    of: "ready_from_at",
    reason: heldBy(seen).cause,
    sure: sureOf(isEstimate(seen)),
    facts: Object.fromEntries(facts),
    says: `It can be sold from ${sayAt(atMs(seen.steps.sale))}: ${heldBack(seen)}.`,
  };
}

/** Why it is at its best until then. */
export function bestReason(cask: Cask): Reason {
  const best = cask.bestBeforeOn;
  const counted = { of: "best_until_at", sure: "counted" } as const;
  if (best === null) {
    const says = "It carries no best-before date.";
    return { ...counted, reason: "no_date", facts: {}, says };
  }
  const says = `Best before ${sayDay(best)}; that day itself is still good.`;
  return { ...counted, reason: "best_before", facts: { best_before_on: best }, says };
}

/** Why it is off by then. */
export function offReason(cask: Cask, days: number, offAt: string | null): Reason {
  const sinceAt = cask.firstDrawnAt ?? cask.tappedAt;
  const counted = { of: "off_by_at", sure: "counted" } as const;
  if (offAt === null || sinceAt === null) {
    const says = `Not tapped yet; it is on sale ${days} days from its first draw.`;
    return { ...counted, reason: "not_tapped", facts: { on_sale_days: days }, says };
  }
  const drawn = cask.firstDrawnAt !== null;
  const begun = drawn ? "First drawn" : "Tapped";
  const says = `${begun} ${sayAt(sinceAt)}, on sale ${days} days: off by ${sayAt(offAt)}.`;
  const facts = { since_at: sinceAt, on_sale_days: days };
  return { ...counted, reason: drawn ? "first_draw" : "tapping", facts, says };
}
