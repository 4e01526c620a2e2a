/** TEMP: the temperatures read at a place, as one series. Twin of cellarapp/domain/readings.py. */

const MOST_READINGS = 400;

/** An instant, and tenths of a degree C. */
export type Reading = [at: string, tempDecidegc: number];

/** TEMP-1: both series as one; of two readings at one instant the warmer stands. */
export function merged(known: Reading[], read: Reading[]): Reading[] {
  const byTime = new Map<string, number>();
  for (const [at, temp] of [...known, ...read]) {
    byTime.set(at, Math.max(byTime.get(at) ?? temp, temp));
  }
  return [...byTime].sort(([a], [b]) => (a < b ? -1 : 1)).slice(-MOST_READINGS);
}
