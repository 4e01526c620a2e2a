// Hired containers: which are due back to their owner soon, what they cost, and where they are.

import { addDays, daysBetween, londonDate } from "../../domain/calendar.ts";
import type { Hire, Standing } from "../../domain/standing.ts";
import { pounds } from "../words/money.ts";
import { count, dateWords } from "../words.ts";

export interface Hired {
  standing: Standing;
  hire: Hire;
}

/** Those due back within so many days, or due already; the first due first. */
export const hiredDue = (
  containers: Iterable<Standing>,
  now: string,
  warnDays: number,
  isHome: (standing: Standing) => boolean,
): Hired[] => {
  const until = addDays(londonDate(now), warnDays);
  return [...containers]
    .flatMap((standing) => {
      const { hire, held } = standing;
      const gone = held?.state === "scrapped" || isHome(standing);
      return hire == null || gone || hire.due_on > until ? [] : [{ standing, hire }];
    })
    .sort((a, b) => (a.hire.due_on < b.hire.due_on ? -1 : Number(a.hire.due_on > b.hire.due_on)));
};

/** "Of Wold, due back 3 Dec. At Lantern." or how late, and what each day costs. */
export const hiredWords = ({ standing, hire }: Hired, where: string, now: string): string => {
  const late = daysBetween(hire.due_on, londonDate(now));
  const due =
    late > 0 ? `due back ${count(late, "day")} ago` : `due back ${dateWords(hire.due_on, now)}`;
  const cost = `${(hire.pence_a_day / 100).toFixed(2)} £ a day`.replace(/^(.*) £/, "£$1");
  const paid = late > 0 ? `, ${pounds(late * hire.pence_a_day)} since then` : "";
  return `Of ${standing.owner ?? "its owner"}, ${due}, ${cost}${paid}. ${where}.`;
};
