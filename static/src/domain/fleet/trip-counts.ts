/** Trips that have ended, as the brewery's server counts them: cellarapp/domain/fleet/trip_counts.py. */
import type { Trips } from "./survival.ts";

/** By kind of container, "" where nobody said which. */
export interface TripCounts {
  /** Day of the trip on which it came on record, days, returned, ended otherwise. */
  ended: Record<string, [number, number, number, number][]>;
  /** How many of them began in each month. */
  begun: Record<string, Record<string, number>>;
}

/** The trips that have ended, of all kinds or of one. */
export function endedTrips({ ended }: TripCounts, kind?: string): Trips[] {
  const rows = kind === undefined ? Object.values(ended).flat() : (ended[kind] ?? []);
  return rows.map(([entered_day, days, returned, open]) => ({ entered_day, days, returned, open }));
}
