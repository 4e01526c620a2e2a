// When the bar is open, day by day: as it is typed, as it is kept, and in words.

import { clockOf } from "../../domain/cellar/times.ts";
import { DAY_MINUTES, WEEK_DAYS, WEEK_MINUTES } from "../../domain/cellar/units.ts";
import { WEEKDAYS } from "../words/weekdays.ts";

/** Minutes after the midnight with which a day begins; past the next one they run on. */
type Span = readonly [opens: number, closes: number];

const spansOf = (minutes: readonly number[], day: number): Span[] => {
  const midnight = day * DAY_MINUTES;
  return minutes.flatMap((opens, n): Span[] => {
    const closes = minutes[n + 1];
    const isThen = n % 2 === 0 && Math.min(Math.floor(opens / DAY_MINUTES), WEEK_DAYS - 1) === day;
    return isThen && closes !== undefined ? [[opens - midnight, closes - midnight]] : [];
  });
};

const clock = (minute: number): string =>
  minute === DAY_MINUTES ? "24:00" : clockOf(minute % DAY_MINUTES);

/** What stands in the field of each day: "12:00-15:00 17:00-00:30", "" for a day that it is shut. */
export const typedDays = (minutes: readonly number[]): string[] =>
  WEEKDAYS.map((_, day) =>
    spansOf(minutes, day)
      .map((span) => span.map(clock).join("-"))
      .join(" "),
  );

const SPAN = /^(\d{1,2})(?:[:.](\d{2}))?-(\d{1,2})(?:[:.](\d{2}))?$/;

const minuteOf = (hours = "", minutes = "0"): number => {
  const minute = Number(hours) * 60 + Number(minutes);
  return Number(minutes) < 60 && minute <= DAY_MINUTES ? minute : Number.NaN;
};

/** "12-23" or "12:00-15:00 17:00-00:30" as spans; a closing before the opening is the next day's. */
const readSpan = (text: string): Span | null => {
  const [whole, fromHours, from, untilHours, until] = SPAN.exec(text) ?? [];
  if (whole === undefined) return null;
  const opens = minuteOf(fromHours, from);
  const closes = minuteOf(untilHours, until);
  if (Number.isNaN(opens) || Number.isNaN(closes)) return null;
  return [opens, closes > opens ? closes : closes + DAY_MINUTES];
};

const STILL_OPEN = "It is still open then from before.";
const FORM = "Times such as 12-23, or 12-15 17:30-00:30; empty when it is shut.";

/** The minutes of the week, or by day what is wrong. */
export const readDays = (typed: readonly string[]): number[] | { faults: (string | null)[] } => {
  const days = typed.map((text) =>
    text
      .replace(/\s*(-|–|\bto\b)\s*/g, "-")
      .split(/[\s,;]+/)
      .filter(Boolean)
      .map(readSpan),
  );
  const faults = days.map((spans): string | null => (spans.includes(null) ? FORM : null));
  const minutes = days.flatMap((spans, day) =>
    spans.flatMap((span) => (span ?? []).map((minute) => minute + day * DAY_MINUTES)),
  );
  if (faults.some(Boolean)) return { faults };
  let closed = (minutes.at(-1) ?? 0) - WEEK_MINUTES;
  minutes.forEach((minute, n) => {
    if (n % 2 === 0 && minute < closed) faults[Math.floor(minute / DAY_MINUTES)] = STILL_OPEN;
    closed = minute;
  });
  return faults.some(Boolean) ? { faults } : minutes;
};

/** "Monday to Thursday 12:00 to 23:00, Friday 12:00 to 00:30"; that every hour counts with none. */
export const barHoursWords = (minutes: readonly number[]): string => {
  if (minutes.length === 0) return "Not entered: every hour counts, nights too";
  const each = WEEKDAYS.map((name, day) => {
    const spans = spansOf(minutes, day).map((span) => span.map(clock).join(" to "));
    return { name, says: spans.length === 0 ? "shut" : spans.join(" and ") };
  });
  const runs: { from: string; until: string; says: string }[] = [];
  for (const { name, says } of each) {
    const last = runs.at(-1);
    if (last?.says === says) last.until = name;
    else runs.push({ from: name, until: name, says });
  }
  return runs
    .map(({ from, until, says }) => `${from === until ? from : `${from} to ${until}`} ${says}`)
    .join(", ");
};
