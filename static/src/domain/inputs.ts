/** What a rule is asked, looked at before it is worked with. Twin of cellarapp/domain/inputs.py. */
import rangesJson from "../../../cellarapp/domain/ranges.json";
import { addDays } from "./calendar.ts";
import { DomainError, notAmong, outOfRange } from "./errors.ts";
import { numberIn, shown } from "./number-in.ts";

export { numberIn, shown };

const FIRST_DAY = "2000-01-01";
const LAST_DAY = "2100-12-31";

export interface Range {
  low: number;
  high: number;
  unit: string;
  why: string;
  whole?: boolean;
}

export type RangedField = keyof typeof rangesJson;

export const RANGES: Readonly<Record<RangedField, Range>> = rangesJson;

/** The value as a whole number from low to high. Throws out-of-range. */
export function wholeIn(
  field: string,
  value: unknown,
  low: number | null,
  high: number | null,
  unit: string,
  why: string,
): number {
  const whole = `whole ${unit}`;
  const number = numberIn(field, value, low, high, whole, why);
  if (!Number.isInteger(number)) {
    throw outOfRange({ field, given: number, low, high, unit: whole, why });
  }
  return number;
}

/** The value, which is one of the choices. Throws not-among. */
export function choiceOf<C extends string>(
  field: string,
  value: unknown,
  choices: readonly C[],
  why: string,
): C {
  const found = choices.find((choice) => choice === value);
  if (found === undefined) throw notAmong({ field, given: shown(value), choices, why });
  return found;
}

/** The value, which is true or false. Throws not-among. */
export function yesOrNo(field: string, value: unknown, why: string): boolean {
  if (typeof value !== "boolean") {
    throw notAmong({ field, given: shown(value), choices: [true, false], why });
  }
  return value;
}

/** The value as a day from 2000 to 2100, written 2026-11-25. Throws out-of-range. */
export function dayOf(field: string, value: unknown): string {
  try {
    if (typeof value === "string" && FIRST_DAY <= value && value <= LAST_DAY) {
      return addDays(value, 0);
    }
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
  }
  const why = "A day is written year-month-day.";
  throw outOfRange({
    field,
    given: shown(value),
    low: FIRST_DAY,
    high: LAST_DAY,
    unit: "day",
    why,
  });
}

/** The value of a field whose range stands in ranges.json; `at` says in which of several. */
export function numberOf(field: RangedField, value: unknown, at = ""): number {
  const known = RANGES[field];
  const check = known.whole ? wholeIn : numberIn;
  return check(at + field, value, known.low, known.high, known.unit, known.why);
}

/** What a rule was asked, read field by field; a name that the rule does not know is refused. */
export class Asked {
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly at: string;

  constructor(inputs: unknown, names: readonly string[], at = "") {
    if (typeof inputs !== "object" || inputs === null || Array.isArray(inputs)) {
      const field = `${at}inputs`;
      throw notAmong({ field, given: shown(inputs), choices: names, why: "Fields by name." });
    }
    for (const [name, value] of Object.entries(inputs)) {
      if (!names.includes(name)) {
        const why = "The rule knows no such field.";
        throw notAmong({ field: at + name, given: shown(value), choices: names, why });
      }
    }
    this.inputs = inputs as Record<string, unknown>;
    this.at = at;
  }

  has(field: string): boolean {
    return (this.inputs[field] ?? null) !== null;
  }

  number(field: RangedField): number {
    return numberOf(field, this.inputs[field], this.at);
  }

  choice<C extends string>(field: string, choices: readonly C[], why: string): C {
    return choiceOf(this.at + field, this.inputs[field], choices, why);
  }

  flag(field: string, why: string): boolean {
    return yesOrNo(this.at + field, this.inputs[field], why);
  }

  /** A list of at most so many parts; each is then read by itself. */
  parts(field: string, most: number, unit: string): unknown[] {
    const value = this.inputs[field];
    if (!Array.isArray(value) || value.length > most) {
      throw outOfRange({
        field: this.at + field,
        given: Array.isArray(value) ? value.length : shown(value),
        low: 0,
        high: most,
        unit: `whole ${unit}`,
        why: "A list.",
      });
    }
    return value;
  }
}
