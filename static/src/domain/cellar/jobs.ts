/** JOB: what is still to do to a container for a sale, by when. Twin of cellarapp/domain/cellar/jobs.py. */
import type { Cask } from "./cask.ts";
import type { Outlook } from "./outlook.ts";
import { atMs, msOf, sayAt } from "./times.ts";
import { beforeVent, latest } from "./timing.ts";
import { doAt, type WorkingDay } from "./working-day.ts";

export const STEPS = ["stillage", "vent", "spile", "tap", "taste"] as const;
export type JobStep = (typeof STEPS)[number];

const DOES: Record<JobStep, string> = {
  stillage: "Set on the stillage",
  vent: "Vent with a soft spile",
  spile: "Change to a hard spile",
  tap: "Tap",
  taste: "Taste",
};

/** A step that is still to do: by when at the latest, and when it falls in the working day. */
export interface Job {
  number: string;
  step: JobStep;
  by_at: string;
  do_at: string;
  late: boolean;
  says: string;
}

/** JOB-1: what is still to do for a sale; what is late is put at its earliest. */
export function jobsFor(
  number: string,
  cask: Cask,
  seen: Outlook,
  day: WorkingDay,
  sale: number,
  now: number,
): Job[] {
  const { gaps, limits, steps: first } = seen;
  const last = latest(gaps, limits, sale);
  const at = (earliest: number, by: number, doneAt: string | null): number => {
    if (doneAt !== null) return msOf(doneAt);
    return earliest <= by ? doAt(day, earliest, by) : earliest;
  };
  const tap = at(first.tap, last.tap, cask.tappedAt);
  const spile = at(first.spile, Math.min(last.spile, tap), cask.hardSpileAt);
  const vent = at(first.vent, Math.min(last.vent, spile - gaps.soft), cask.ventedAt);
  const set = Math.min(last.stillage, vent - beforeVent(gaps, limits));
  const stillage = at(first.stillage, set, cask.stillagedAt);
  const tasteBy = sale - gaps.taste;
  const taste = at(Math.max(tap, now), tasteBy, cask.tastedAt);
  const all: [JobStep, number, number, string | null][] = [
    ["stillage", last.stillage, stillage, cask.stillagedAt],
    ["vent", last.vent, vent, cask.ventedAt],
    ["spile", last.spile, spile, cask.hardSpileAt],
    ["tap", last.tap, tap, cask.tappedAt],
    ["taste", tasteBy, taste, cask.tastedAt],
  ];
  const wanted: readonly JobStep[] = cask.shape === "cask" ? STEPS : ["tap", "taste"];
  return all
    .filter(([step, , , doneAt]) => doneAt === null && wanted.includes(step))
    .map(([step, by, time]) => job(number, step, by, time));
}

function job(number: string, step: JobStep, by: number, time: number): Job {
  const late = time > by;
  const [doSays, bySays] = [sayAt(atMs(time)), sayAt(atMs(by))];
  let says = `${DOES[step]} ${doSays}`;
  if (late) says = `${DOES[step]}, due by ${bySays}; ${doSays} at the earliest`;
  else if (time !== by) says += `, by ${bySays} at the latest`;
  return { number, step, by_at: atMs(by), do_at: atMs(time), late, says: `${number}: ${says}.` };
}
