/** OPEN: the hours at which the bar draws beer. Twin of cellarapp/domain/cellar/open_hours.py. */
import { addDays, daysBetween, londonDate, londonInstant } from "../calendar.ts";
import { type DomainError, outOfRange } from "../errors.ts";
import type { Working } from "../working.ts";
import { A_MONDAY, atMs, msOf } from "./times.ts";
import { DAY_HOURS, HOUR_MS, WEEK_DAYS, WEEK_MINUTES } from "./units.ts";

const IN_PAIRS = "Each hour of opening has its hour of closing.";
const CLOSES_LATER = "It closes after it opens, and before it opens again.";

type Span = readonly [from: number, until: number];

/**
 * Opening and closing in minutes after Monday's midnight on a London clock, in their order; past
 * the last midnight of the week they run on. With none, every hour counts.
 */
export class OpenHours {
  readonly spans: readonly Span[];

  constructor(spans: readonly Span[]) {
    this.spans = spans;
  }

  /** From that time on, when it is open, without end. */
  private *from(time: number): Generator<Span, never> {
    const day = londonDate(atMs(time));
    const since = (daysBetween(A_MONDAY, day) % WEEK_DAYS) + WEEK_DAYS;
    let monday = addDays(day, -(since % WEEK_DAYS) - WEEK_DAYS);
    let until = time;
    while (true) {
      for (const [opens, closes] of this.spans) {
        // On the night when an hour is leapt over a later time may come first.
        const begins = Math.max(until, msOf(londonInstant(monday, opens)));
        const ends = msOf(londonInstant(monday, closes));
        if (begins < ends) {
          yield [begins, ends];
          until = ends;
        }
      }
      monday = addDays(monday, WEEK_DAYS);
    }
  }

  /** OPEN-1: how long it was open between two times. */
  betweenMs(first: number, last: number): number {
    if (this.spans.length === 0) return last - first;
    let openMs = 0;
    for (const [begins, ends] of this.from(first)) {
      if (begins >= last) break;
      openMs += Math.min(ends, last) - begins;
    }
    return openMs;
  }

  /** OPEN-2: when it has been open for so long since a time. */
  afterMs(time: number, openMs: number): number {
    if (this.spans.length === 0 || openMs === 0) return time + openMs;
    const spans = this.from(time);
    let left = openMs;
    let [begins, ends] = spans.next().value;
    while (left > ends - begins) {
      left -= ends - begins;
      [begins, ends] = spans.next().value;
    }
    return begins + left;
  }

  /** OPEN-3: the time itself, or when it opens next. */
  nextOpen(time: number): number {
    return this.spans.length === 0 ? time : this.from(time).next().value[0];
  }

  /** Hours that it is open, on average over the week. */
  aDay(): number {
    const minutes = this.spans.reduce((sum, [opens, closes]) => sum + closes - opens, 0);
    return this.spans.length === 0 ? DAY_HOURS : minutes / (60 * WEEK_DAYS);
  }

  /** The same as betweenMs, in hours. */
  hoursBetween(first: number, last: number): number {
    return this.betweenMs(first, last) / HOUR_MS;
  }
}

/** The brewery's own. Throws out-of-range for times that are no pairs, or run into each other. */
export function askedOpenHours(work: Working): OpenHours {
  const times = work.settingList("bar_hours").map(Math.floor);
  if (times.length % 2 === 1) throw refused(times.length, times.length - 1, times.length + 1);
  const spans: Span[] = [];
  for (const [n, opens] of times.entries()) {
    const closes = times[n + 1];
    if (n % 2 === 1 || closes === undefined) continue;
    const again = times[n + 2] ?? (times[0] ?? 0) + WEEK_MINUTES;
    if (closes <= opens || closes > again) throw refused(closes, opens + 1, again, CLOSES_LATER);
    spans.push([opens, closes]);
  }
  if (spans.length === 0) work.caution("every_hour_counts");
  return new OpenHours(spans);
}

function refused(given: number, low: number, high: number, why = IN_PAIRS): DomainError {
  const unit = why === CLOSES_LATER ? "minutes after Monday's midnight" : "values";
  return outOfRange({ field: "bar_hours", given, low, high, unit, why });
}
