/** PLAN: back from a sale to what has to be done by when, and today's jobs. Twin of cellarapp/domain/cellar/plan.py. */
import { daysBetween, londonDate } from "../calendar.ts";
import type { CautionId } from "../cautions.ts";
import { notAmong } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { isNumber } from "../numbers.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { askedCask, CASK_FIELDS, type Cask, type CaskInputs } from "./cask.ts";
import { afterDays, daysOnSale } from "./days.ts";
import { type Job, jobsFor, STEPS } from "./jobs.ts";
import { type Cause, heldBy, isEstimate, type Outlook, outlook } from "./outlook.ts";
import { warn } from "./ready.ts";
import { heldBack } from "./reasons.ts";
import { atMs, endOf, msOf, sayAt, sayDay } from "./times.ts";
import { askedWorkingDay, type WorkingDay } from "./working-day.ts";

const MOST_CASKS = 200;
const NUMBER_WHY = "A container's number in its normal form.";

export interface CandidateInputs extends CaskInputs {
  number: string;
}

export interface PlanInputs {
  now: string;
  sale_at: string;
  casks: readonly CandidateInputs[];
}

export interface JobsInputs {
  now: string;
  casks: readonly (CandidateInputs & { sale_at: string })[];
}

/** One cask for one sale. */
export interface Planned {
  number: string;
  can: boolean;
  against: Cause | "past_best_before" | "on_sale_already" | null;
  says: string;
  sale_at: string;
  ready_from_at: string;
  best_before_on: string | null;
  left_days: number | null;
  off_by_at: string;
  estimated: boolean;
  cautions: CautionId[];
  jobs: Job[];
}

/** PLAN-1: what stands against the sale, and a sentence; null when nothing does. */
function whyNot(cask: Cask, seen: Outlook, saleAt: string): Pick<Planned, "against" | "says"> {
  const best = cask.bestBeforeOn;
  if (best !== null && londonDate(saleAt) > best) {
    return { against: "past_best_before", says: `Its best before is ${sayDay(best)}.` };
  }
  if (cask.firstDrawnAt !== null && cask.firstDrawnAt < saleAt) {
    const says = `It has been on sale since ${sayAt(cask.firstDrawnAt)}.`;
    return { against: "on_sale_already", says };
  }
  if (seen.steps.sale > msOf(saleAt)) {
    const says = `Not before ${sayAt(atMs(seen.steps.sale))}: ${heldBack(seen)}.`;
    return { against: heldBy(seen).cause, says };
  }
  return { against: null, says: `Ready for ${sayAt(saleAt)}.` };
}

function numberOf(asked: CellarAsked): string {
  const number = asked.given["number"];
  if (typeof number === "string" && isNumber(number)) return number;
  const given = typeof number === "string" ? number : null;
  const field = `${asked.place}number`;
  throw notAmong({ field, given, choices: ["a container's number"], why: NUMBER_WHY });
}

/** PLAN-2: one cask for one sale. */
function planned(
  work: Working,
  settings: Settings | null,
  asked: CellarAsked,
  day: WorkingDay,
  saleAt: string,
  now: string,
): Planned {
  const number = numberOf(asked);
  const own = new Working(settings);
  const cask = askedCask(own, asked);
  const seen = outlook(own, cask, now);
  warn(own, cask, seen);
  const { against, says } = whyNot(cask, seen, saleAt);
  const offAt = afterDays(saleAt, daysOnSale(own, cask.shape, cask.onSaleDays));
  const best = cask.bestBeforeOn;
  if (against === null && best !== null && msOf(offAt) > msOf(endOf(best))) {
    own.caution("best_before_ends_on_sale");
  }
  const { cautions, figures } = own.done(null);
  for (const name of figures) work.figure(name);
  for (const name of cautions) work.caution(name);
  return {
    number,
    can: against === null,
    against,
    says,
    sale_at: saleAt,
    ready_from_at: atMs(seen.steps.sale),
    best_before_on: best,
    left_days: best === null ? null : daysBetween(londonDate(saleAt), best),
    off_by_at: offAt,
    estimated: isEstimate(seen),
    cautions,
    jobs: jobsFor(number, cask, seen, day, msOf(saleAt), msOf(now)),
  };
}

const order = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

/** PLAN-3: what can be sold first, of that what is best before soonest, then what is ready. */
function firstOut(a: Planned, b: Planned): number {
  return (
    Number(b.can) - Number(a.can) ||
    Number(a.best_before_on === null) - Number(b.best_before_on === null) ||
    order(a.best_before_on ?? "", b.best_before_on ?? "") ||
    order(a.ready_from_at, b.ready_from_at) ||
    order(a.number, b.number)
  );
}

const parts = (asked: CellarAsked, names: readonly string[]): CellarAsked[] =>
  asked
    .parts("casks", MOST_CASKS, "casks")
    .map((part, n) => new CellarAsked(part, [...names, ...CASK_FIELDS], `casks[${n}].`));

/** PLAN-4: for a sale at a time, every candidate: whether it can, and what is to do by when. */
export function planBack(inputs: PlanInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["now", "sale_at", "casks"]);
  const work = new Working(settings);
  const day = askedWorkingDay(work);
  const now = asked.instant("now");
  const saleAt = asked.instant("sale_at", now, "Not before now.");
  const rows = parts(asked, ["number"]).map((each) =>
    planned(work, settings, each, day, saleAt, now),
  );
  const can = rows.filter((row) => row.can).length;
  work.step(`Can be on sale by ${sayAt(saleAt)}`, can, "casks", 0);
  if (can > 0) work.caution("vent_with_air");
  return work.done({ sale_at: saleAt, casks: rows.sort(firstOut) });
}

/** PLAN-5: what is to do today, in order of time, for the casks that were picked for sales. */
export function todaysJobs(inputs: JobsInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["now", "casks"]);
  const work = new Working(settings);
  const day = askedWorkingDay(work);
  const now = asked.instant("now");
  const jobs = parts(asked, ["number", "sale_at"]).flatMap(
    (each) => planned(work, settings, each, day, each.instant("sale_at"), now).jobs,
  );
  const midnight = endOf(londonDate(now));
  const today = jobs
    .filter((job) => job.do_at < midnight)
    .sort(
      (a, b) =>
        order(a.do_at, b.do_at) ||
        STEPS.indexOf(a.step) - STEPS.indexOf(b.step) ||
        order(a.number, b.number),
    );
  work.step("Jobs today", today.length, "jobs", 0);
  return work.done({ jobs: today, later: jobs.length - today.length });
}
