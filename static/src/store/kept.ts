// What the phone keeps of its own entries, and the rows it has from the brewery.
// Entries and rows keep the names they have on the wire; what only the phone knows is beside them.

import type { MadeEntry, RecordKind } from "../domain/entries.ts";
import type { TripCounts } from "../domain/fleet/trip-counts.ts";
import type { AnyRecord } from "../domain/records.ts";
import type { Standing } from "../domain/standing.ts";

export type SubjectType = "container" | "trips" | RecordKind;

/** What the brewery says of one thing now, and the position of the last entry that touched it. */
export interface Row {
  type: SubjectType;
  id: string;
  position: number;
  doc: Standing | AnyRecord | TripCounts;
}

/** `container:117`: how a row is named on the phone. */
export type RowKey = string;
export const rowKey = (type: SubjectType, id: string): RowKey => `${type}:${id}`;

/** What the phone's clocks said when an entry was made, to put its time right by when it is sent. */
export interface Reckoning {
  savedAt: string;
  /** The correction of the phone's clock that is in `savedAt`, and in a `happened_at` that is now. */
  offsetMs: number;
  /** What cannot be set: a page's stopwatch. Absent from what a release before this one kept. */
  watch?: {
    page: string;
    ms: number;
    /** By the brewery's clock, its last answer before: what is made later cannot be older. */
    heardAt: string | null;
  };
}

/** An own entry on its way. `before` is what it was about, as it stood without it: for an undo. */
export interface Kept extends Reckoning {
  entry: MadeEntry;
  before: Standing | AnyRecord | null;
  /** Offered once more after the brewery's ledger was restored: its rows may hold it already. */
  again?: true;
}

/** An entry as it was made, without what has become of it since. */
export const asMade = ({ entry, before, savedAt, offsetMs, watch }: Kept): Kept => {
  const made = { entry, before, savedAt, offsetMs };
  return watch === undefined ? made : { ...made, watch };
};

/** An own entry that the brewery has. Its position means something within one epoch only. */
export interface Sent extends Kept {
  epoch: string;
  position: number;
  sentAt: string;
}

/** Why the brewery did not take an entry, in the words of its problem details. */
export interface Problem {
  type?: string;
  title?: string;
  detail?: string;
  errors?: { pointer?: string; detail?: string }[];
}

/** An own entry that waits for a person. */
export interface Attention extends Kept {
  verdict: "held" | "refused";
  problem: Problem;
  answeredAt: string;
}

/** The phone's running number and the time of its last entry, kept together with each save. */
export interface Running {
  seq: number;
  lastAt: string;
}

/** Which rows are held: those of this epoch up to this position. */
export interface RowsAt {
  epoch: string;
  cursor: number;
  /** Where the last complete pull ended: entries up to here are in the rows. A page may end
   * between an entry's position and that of the row it changed, so the cursor does not say so. */
  whole: number;
  rules: number;
  /** Which set of pages holds them. */
  generation: number;
  /** Counts every change, so that a tab can see that another one has changed them. */
  revision: number;
}

/** What can be said of the rows: whose they are, and which entries they hold. */
export type Vouched = Pick<RowsAt, "epoch" | "whole">;

/** A first load under way, and how far it has come. */
export interface Loading {
  epoch: string;
  position: number;
  rules: number;
  generation: number;
  /** The key after which the next page starts; null at the beginning. */
  after: string | null;
  pages: number;
  /** What made it necessary, if it is not the first. */
  why?: Why;
}

/**
 * Why rows are fetched anew: the ledger was restored, and says so; it went back and does not; rows
 * turned out to differ; or they are folded by other rules.
 */
export type Why = "restored" | "went back" | "differs" | "rules";

export interface ClockOffset {
  offsetMs: number;
  /** By the brewery's clock. */
  measuredAt: string;
}
