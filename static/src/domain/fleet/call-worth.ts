/** CALL: what a call to a customer is worth. Twin of cellarapp/domain/fleet/call_worth.py. */
import { CONTAINER_KINDS } from "../containers.ts";
import type { FigureId, Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp, halfUpWhole } from "../rounding.ts";
import { Working } from "../working.ts";
import {
  askedTrips,
  type Curve,
  curve,
  lastWatched,
  stillOutLater,
  type Trips,
} from "./survival.ts";

const MOST_OUT = 1000;
const UNKNOWN_KIND = "other_cask";
const KIND_WHY = "A kind of container.";
const PERCENT = 100;
const OUT_FIELDS = [
  "kind",
  "days_out",
  "agreed_days",
  "value_pounds",
  "deposit_pounds",
  "hire_pounds_a_day",
];

export interface OutInputs {
  kind?: string | null;
  days_out: number;
  agreed_days?: number | null;
  value_pounds?: number | null;
  deposit_pounds?: number | null;
  hire_pounds_a_day?: number | null;
}

export interface CallWorthInputs {
  own: readonly Trips[];
  all: readonly Trips[];
  out: readonly OutInputs[];
}

interface Out {
  daysOut: number;
  agreedDays: number;
  /** What it costs to replace, less the deposit that stays with us. */
  valuePounds: number;
  hirePoundsADay: number;
}

/** The trips that a customer is judged by, and the chances to be out a fortnight later too. */
interface Evidence {
  by: "own" | "all";
  every: Curve;
  lastDay: number;
  stays: readonly number[];
}

/** The containers that the customer has, each with what it costs to do without. */
function askedOut(asked: Asked, work: Working): Out[] {
  return asked.parts("out", MOST_OUT, "containers").map((part, n) => {
    const one = new Asked(part, OUT_FIELDS, `out[${n}].`);
    const kind = one.has("kind")
      ? one.choice("kind", Object.keys(CONTAINER_KINDS), KIND_WHY)
      : UNKNOWN_KIND;
    const valuePounds = one.has("value_pounds")
      ? one.number("value_pounds")
      : work.setting(`${kind}_value_pounds` as FigureId);
    const agreedDays = one.has("agreed_days")
      ? one.number("agreed_days")
      : Math.floor(work.setting("agreed_days"));
    const deposit = one.has("deposit_pounds") ? one.number("deposit_pounds") : 0;
    const hirePoundsADay = one.has("hire_pounds_a_day") ? one.number("hire_pounds_a_day") : 0;
    return {
      daysOut: one.number("days_out"),
      agreedDays,
      valuePounds: Math.max(0, valuePounds - deposit),
      hirePoundsADay,
    };
  });
}

/** CALL-1: the customer's own trips once enough have ended with a return and lasted so long. */
function judgedBy(work: Working, asked: Asked): Evidence {
  const own = askedTrips(asked, "own");
  const every = askedTrips(asked, "all");
  const returned = own.reduce((sum, one) => sum + one.returned, 0);
  work.step("Trips of this customer that ended with a return", returned, "trips", 0);
  const enough = returned >= work.setting("own_trips_enough");
  const ofAll = curve(every);
  const ofOwn = curve(enough ? own : []);
  const within = Math.trunc(work.setting("chance_within_days"));
  const longer = ofOwn.shares.length > ofAll.shares.length ? ofOwn : ofAll;
  const stays = longer.shares.map((_, day) => {
    const seen = day + 1 < ofOwn.shares.length ? ofOwn : ofAll;
    return stillOutLater(seen, day, within) ?? 1;
  });
  const lastDay = lastWatched([...own, ...every]);
  return { by: enough ? "own" : "all", every: ofAll, lastDay, stays };
}

/** CALL-2: the chance that a late container is still out in a fortnight if nobody asks. */
function chanceStillOut({ stays }: Evidence, { daysOut, agreedDays }: Out): number {
  if (daysOut <= agreedDays) return 0;
  if (daysOut >= stays.length) return 1;
  return Math.max(...stays.slice(agreedDays + 1, daysOut + 1));
}

/** CALL-3: the chance that it is never back: still out when it is to be taken for lost. */
function chanceLost({ every }: Evidence, { daysOut }: Out, lostAfter: number): number {
  if (daysOut >= lostAfter) return 1;
  const now = every.stillOut(daysOut);
  return now === 0 ? 1 : every.stillOut(lostAfter) / now;
}

/**
 * KM-2: as the trips have it; null after the last return, or where none was watched so long. Of
 * what is late CALL-2 has the other half, so that the chance and the money say the same.
 */
function chanceBack(evidence: Evidence, out: Out, within: number): number | null {
  const { stays, lastDay } = evidence;
  const stay = out.daysOut + within > lastDay ? undefined : stays[out.daysOut];
  if (stay === undefined) return null;
  return 1 - (out.daysOut > out.agreedDays ? chanceStillOut(evidence, out) : stay);
}

/** CALL-4: what would likely be still out in a fortnight if nobody rang, in money. */
export function callWorth(inputs: CallWorthInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["own", "all", "out"]);
  const work = new Working(settings);
  const evidence = judgedBy(work, asked);
  const allOut = askedOut(asked, work);
  const within = Math.trunc(work.setting("chance_within_days"));
  const lostAfter = Math.trunc(work.setting("lost_after_days"));
  const proposePct = work.setting("missing_proposed_pct");
  let worth = 0;
  let loss = 0;
  const rows = allOut.map((out) => {
    const lateDays = Math.max(0, out.daysOut - out.agreedDays);
    const lost = lateDays > 0 ? chanceLost(evidence, out, lostAfter) : 0;
    const back = chanceBack(evidence, out, within);
    const hiredOn = Math.max(0, lostAfter - out.daysOut);
    worth += chanceStillOut(evidence, out) * (out.valuePounds + out.hirePoundsADay * within);
    loss += lost * (out.valuePounds + out.hirePoundsADay * hiredOn);
    return {
      days_out: out.daysOut,
      late_days: lateDays,
      back_pct: back === null ? null : halfUpWhole(back * PERCENT),
      lost_pct: halfUpWhole(lost * PERCENT),
      propose_missing: lateDays > 0 && halfUp(lost * PERCENT, 3) >= proposePct,
    };
  });
  const late = rows.filter((row) => row.late_days > 0);
  work.step("Late, of those that are out", late.length, "containers", 0);
  const chances = new Map<number, number>();
  for (const { days_out, back_pct } of late) {
    if (back_pct === null) continue;
    chances.set(days_out, Math.min(back_pct, chances.get(days_out) ?? back_pct));
  }
  for (const [days, leastPct] of chances) {
    const said = `Out ${days} days: the least chance since it fell due to be back in a fortnight`;
    work.step(said, leastPct, "%", 0);
  }
  work.step(
    "Likely still out in a fortnight = sum of (value - deposit + hire) x chance",
    worth,
    "£",
    0,
  );
  work.step(
    "Likely lost = sum of (value - deposit + hire) x chance never to be back",
    loss,
    "£",
    0,
  );
  return work.done({
    worth_pence: halfUpWhole(worth * PERCENT),
    loss_pence: halfUpWhole(loss * PERCENT),
    worth_calling: halfUp(worth, 2) >= work.setting("call_worth_least_pounds"),
    late: late.length,
    longest_days: rows.reduce((longest, row) => Math.max(longest, row.days_out), 0),
    judged_by: evidence.by,
    least_back_pct: chances.size === 0 ? null : Math.min(...chances.values()),
    out: rows,
  });
}
