/** What the rules refuse; the slugs are those of cellarapp/domain/errors.py. */
export class DomainError extends Error {
  readonly slug: string;
  readonly facts: Record<string, unknown>;

  constructor(slug: string, facts: Record<string, unknown>) {
    super(`${slug}: ${JSON.stringify(facts)}`);
    this.slug = slug;
    this.facts = facts;
  }
}

/** A number is one to eight letters and digits, at least one of them a digit. */
export const notANumber = (text: string): DomainError => new DomainError("not-a-number", { text });

/** A date is written year-month-day, as 2026-11-25. */
export const notADate = (text: string): DomainError => new DomainError("not-a-date", { text });

/** A time is written as 2026-11-25T09:40:00.000Z. */
export const notATime = (text: string): DomainError => new DomainError("not-a-time", { text });

/** Not a GRAI with the right check digit. */
export const notAnAssetNumber = (text: string): DomainError =>
  new DomainError("not-an-asset-number", { text });

/** A quantity is missing, is no number, or lies beyond what the rule works with. */
export const outOfRange = (facts: {
  field: string;
  given: unknown;
  low: number | string | null;
  high: number | string | null;
  unit: string;
  why: string;
}): DomainError => new DomainError("out-of-range", facts);

/** An answer is none of those that the rule knows. */
export const notAmong = (facts: {
  field: string;
  given: unknown;
  choices: readonly unknown[];
  why: string;
}): DomainError => new DomainError("not-among", facts);
