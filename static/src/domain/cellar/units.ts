/** Units of time and temperature that are exact by definition. Twin of cellarapp/domain/cellar/units.py. */
export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;
export const DAY_HOURS = 24;
export const HALF_DAY_HOURS = 12;
export const DAY_MINUTES = 60 * DAY_HOURS;
export const WEEK_DAYS = 7;
export const WEEK_MINUTES = WEEK_DAYS * DAY_MINUTES;
export const YEAR_MONTHS = 12;
export const THIS_CENTURY = 2000;

/** The same temperature in degrees Celsius. */
export const celsius = (tempF: number): number => (tempF - 32) / 1.8;
