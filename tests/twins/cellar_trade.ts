/** The cellar's rules on the phone, by the names of cellarapp/domain/cellar/calculations.py. */
import { ageing, q10Between } from "../../static/src/domain/cellar/ageing.ts";
import { cooled, cooling, hoursTo, tempAfter } from "../../static/src/domain/cellar/cooling.ts";
import { dateMark } from "../../static/src/domain/cellar/date-mark.ts";
import { fullMl, lyingMl, standingMl } from "../../static/src/domain/cellar/gauging.ts";
import { label, labelStrength } from "../../static/src/domain/cellar/label.ts";
import { leftByDip, leftByWeight } from "../../static/src/domain/cellar/left.ts";
import { readLog } from "../../static/src/domain/cellar/logger.ts";
import { lotMark } from "../../static/src/domain/cellar/lot.ts";
import { offBy } from "../../static/src/domain/cellar/on-sale.ts";
import { planBack, todaysJobs } from "../../static/src/domain/cellar/plan.ts";
import { ready } from "../../static/src/domain/cellar/ready.ts";
import { runOut } from "../../static/src/domain/cellar/run-out.ts";
import { sediment } from "../../static/src/domain/cellar/sediment.ts";
import { bestBefore, lifeLeft } from "../../static/src/domain/cellar/shelf-life.ts";

export const CELLAR = {
  best_before: bestBefore,
  life_left: lifeLeft,
  date_mark: dateMark,
  lot_mark: lotMark,
  label,
  label_strength: labelStrength,
  off_by: offBy,
  ageing,
  q10_between: q10Between,
  cooling,
  cooled,
  read_log: readLog,
  ready,
  plan_back: planBack,
  todays_jobs: todaysJobs,
  left_by_dip: leftByDip,
  left_by_weight: leftByWeight,
  sediment,
  run_out: runOut,
};

const TAU_HOURS = 19.67;

const inside = (bungMm: number, headShare: number, lengthMm: number) => ({
  bungMm,
  headMm: bungMm * headShare,
  lengthMm,
});

/** What stands behind the rounded figures, as it is before rounding. */
export const CELLAR_UNROUNDED = {
  hours_to: (way: number, air: number, share: number) =>
    hoursTo(air + way, air, air + way * share, TAU_HOURS),
  temp_after: (from: number, air: number, hours: number) => tempAfter(from, air, hours, TAU_HOURS),
  full_ml: (bung: number, head: number, length: number) => fullMl(inside(bung, head, length)),
  lying_ml: (bung: number, head: number, length: number, wet: number) =>
    lyingMl(inside(bung, head, length), wet * bung),
  standing_ml: (bung: number, head: number, length: number, wet: number) =>
    standingMl(inside(bung, head, length), wet * length),
};
