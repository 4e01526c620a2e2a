/** Days, times and words in what a rule is asked. Twin of cellarapp/domain/cellar/asked.py. */
import { parseInstant } from "../calendar.ts";
import { DomainError, notAmong } from "../errors.ts";
import { Asked, type RangedField, shown } from "../inputs.ts";

export const FIRST_DAY = "2000-01-01";
export const LAST_DAY = "2100-12-31";
export const FIRST_AT = `${FIRST_DAY}T00:00:00.000Z`;
export const LAST_AT = `${LAST_DAY}T23:59:59.999Z`;
export const SHAPES = ["cask", "keg"] as const;
const SHAPE_WHY = "Casks and kegs keep and are served in their own ways.";

export type Shape = (typeof SHAPES)[number];

const isInstant = (text: string): boolean => {
  try {
    parseInstant(text);
    return true;
  } catch (fault) {
    if (fault instanceof DomainError) return false;
    throw fault;
  }
};

/** What a rule of the cellar was asked. */
export class CellarAsked extends Asked {
  readonly place: string;
  readonly given: Readonly<Record<string, unknown>>;

  constructor(inputs: unknown, names: readonly string[], at = "") {
    super(inputs, names, at);
    this.place = at;
    this.given = inputs as Record<string, unknown>;
  }

  /** A day, not before the lowest. Throws not-a-date with field, range and reason. */
  day(field: string, low = FIRST_DAY, why = "A day."): string {
    const value = this.given[field];
    const fits = typeof value === "string" && low <= value && value <= LAST_DAY;
    if (fits && isInstant(`${value}T12:00:00.000Z`)) return value;
    const facts = { field: this.place + field, given: shown(value), low, high: LAST_DAY, why };
    throw new DomainError("not-a-date", facts);
  }

  /** A time, not before the earliest. Throws not-a-time with field, range and reason. */
  instant(field: string, low = FIRST_AT, why = "A time in UTC."): string {
    const value = this.given[field];
    const fits = typeof value === "string" && low <= value && value <= LAST_AT;
    if (fits && isInstant(value)) return value;
    const facts = { field: this.place + field, given: shown(value), low, high: LAST_AT, why };
    throw new DomainError("not-a-time", facts);
  }

  /** Cask or keg. */
  shape(): Shape {
    return this.choice("shape", SHAPES, SHAPE_WHY);
  }

  /** Text of a form. Throws not-among, whose choices name the form. */
  words(field: string, form: string, why: string): string {
    const value = this.given[field];
    if (typeof value === "string" && new RegExp(`^(?:${form})$`).test(value)) return value;
    const facts = { field: this.place + field, given: shown(value), choices: [form], why };
    throw notAmong(facts);
  }

  /** Yes or no, or the default where it was not answered. */
  yes(field: string, why: string, otherwise: boolean): boolean {
    return this.has(field) ? this.flag(field, why) : otherwise;
  }

  /** A number, or null where it was not answered. */
  maybeNumber(field: RangedField): number | null {
    return this.has(field) ? this.number(field) : null;
  }

  /** A day, or null where it was not answered. */
  maybeDay(field: string): string | null {
    return this.has(field) ? this.day(field) : null;
  }

  /** A time, or null where it was not answered. */
  maybeInstant(field: string, low = FIRST_AT, why = "A time."): string | null {
    return this.has(field) ? this.instant(field, low, why) : null;
  }
}
