// A plan for a sale, and today's jobs for what was picked, from what stands in the cellar.

import { daysBetween, londonDate, londonInstant } from "../../domain/calendar.ts";
import type { Job, JobStep } from "../../domain/cellar/jobs.ts";
import {
  type CandidateInputs,
  type Planned,
  planBack,
  todaysJobs,
} from "../../domain/cellar/plan.ts";
import { candidateInputs } from "../../domain/cellar/told.ts";
import type { Settings } from "../../domain/figures.ts";
import { type Known, sentence, timeWords } from "../words.ts";
import { around } from "./fit.ts";
import type { Full } from "./full.ts";

export type Plan = ReturnType<typeof planBack>;
export type Jobs = ReturnType<typeof todaysJobs>;

/** The rule takes so many; a small brewery sells fewer at once. */
const MOST = 200;
const A_SATURDAY = "2000-01-01";
const WEEK = 7;
/** A cask picked for a sale that is over is no job for long. */
const OVER_MS = 24 * 3_600_000;

/** The Saturday after today, as a day. */
export const nextSaturday = (now: string): string => {
  const today = londonDate(now);
  const ahead = WEEK - (daysBetween(A_SATURDAY, today) % WEEK);
  return londonDate(new Date(Date.parse(`${today}T12:00Z`) + ahead * 86_400_000).toISOString());
};

const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$/;

/** A day and a London clock as an instant; null where one of them says nothing. */
export const saleInstant = (day: string, clock: string): string | null => {
  const found = CLOCK.exec(clock);
  if (found === null || !/^20\d\d-\d\d-\d\d$/.test(day)) return null;
  return londonInstant(day, Number(found[1]) * 60 + Number(found[2]));
};

/** What the rule is told; null where what was noted cannot be, which a question says elsewhere. */
const told = (full: Full, known: Known): CandidateInputs | null =>
  full.fit() === null ? null : candidateInputs(full.standing, around(full.standing, known));

const LAST_DAY = "9999";
const best = (full: Full): string => full.contents.best_before ?? LAST_DAY;

/** Full, nobody's to decide about, and not on sale yet. */
export const candidatesFor = (fulls: readonly Full[]): Full[] =>
  fulls
    .filter(({ standing, look }) => standing.held === null && look !== "past" && look !== "query")
    .filter(({ standing }) => standing.serving?.tapped == null)
    .sort((a, b) => (best(a) < best(b) ? -1 : Number(best(a) > best(b))))
    .slice(0, MOST);

/** Null while the time of the sale is not one still to come. */
export const planFor = (
  fulls: readonly Full[],
  saleAt: string | null,
  known: Known,
  settings: Settings,
): Plan | null => {
  const { now } = known;
  if (saleAt === null || saleAt < now) return null;
  const casks = candidatesFor(fulls)
    .map((full) => told(full, known))
    .filter((cask) => cask !== null);
  return planBack({ now, sale_at: saleAt, casks }, settings);
};

/** Picked for a sale that is still to come, or was a short while ago. */
export const isPicked = ({ standing }: Full, now: string): boolean =>
  standing.planned !== null &&
  standing.held === null &&
  Date.parse(standing.planned.sale_at) > Date.parse(now) - OVER_MS;

/** Every pick as its own sale needs it, the first sale first. */
export const pickedRows = (fulls: readonly Full[], known: Known, settings: Settings): Planned[] =>
  fulls
    .filter((full) => isPicked(full, known.now))
    .flatMap((full) => {
      const cask = told(full, known);
      const sale = full.standing.planned?.sale_at;
      if (cask === null || sale === undefined) return [];
      const { now } = known;
      const isOver = sale < now; // and still not on sale: at once
      const asked = { now, sale_at: isOver ? now : sale, casks: [cask] };
      return planBack(asked, settings).result.casks;
    })
    .sort((a, b) => (a.sale_at < b.sale_at ? -1 : Number(a.sale_at > b.sale_at)));

export const jobsFor = (fulls: readonly Full[], known: Known, settings: Settings): Jobs | null => {
  const casks = fulls
    .filter((full) => isPicked(full, known.now))
    .slice(0, MOST)
    .flatMap((full) => {
      const cask = told(full, known);
      const sale = full.standing.planned?.sale_at;
      return cask === null || sale === undefined ? [] : [{ ...cask, sale_at: sale }];
    });
  return casks.length === 0 ? null : todaysJobs({ now: known.now, casks }, settings);
};

/** The button of a job, and the same as the beginning of a sentence. */
export const JOB_WORDS: { readonly [step in JobStep]: { does: string; says: string } } = {
  stillage: { does: "Stillage", says: "set on the stillage" },
  vent: { does: "Vent", says: "vent with a soft spile" },
  spile: { does: "Hard spile", says: "change to a hard spile" },
  tap: { does: "Tap", says: "tap" },
  taste: { does: "Tastes good", says: "taste" },
};

/** "Vent with a soft spile at 14:00, by 16:00 at the latest." */
export const jobWords = (job: Job, now: string): string => {
  const { says } = JOB_WORDS[job.step];
  const by = timeWords(job.by_at, now);
  if (job.by_at < now) return `${sentence(says)} at once: it was due by ${by}.`;
  if (job.late) return `${sentence(says)} ${timeWords(job.do_at, now)}, not in time for ${by}.`;
  const when = job.do_at <= now ? "now" : timeWords(job.do_at, now);
  const latest = job.do_at === job.by_at ? "" : `, by ${by} at the latest`;
  return `${sentence(says)} ${when}${latest}.`;
};

/** Whether it can, or why not, and the first thing to do; "estimate" where it is one. */
export const plannedWords = (row: Planned, now: string): string => {
  const [first] = row.jobs;
  const guess = row.estimated ? " This is an estimate." : "";
  if (!row.can) return `${row.says}${guess}`;
  const left = row.left_days === null ? "" : ` ${row.left_days} days of its life left then.`;
  const next = first === undefined ? "Nothing is left to do." : jobWords(first, now);
  return `${next}${left}${guess}`;
};
