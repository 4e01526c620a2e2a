/** A container's standing: what the ledger says of it now. Twin of cellarapp/domain/standing.py. */
import type { Entry, Facts } from "./entries.ts";

/** Who said so and when; inferred when no entry said it and another one implied it. */
export interface Mark {
  since: string;
  entry: string;
  by: string;
  inferred: boolean;
}

export interface Place extends Mark {
  at: string;
  with_customer: boolean;
}

/** What was added, liquid in mL or dry in g; `moves` is how often the beer had moved by then. */
export interface Dose extends Mark {
  what: "primings" | "auxiliary_alginate" | "auxiliary_silica" | "isinglass" | "hops";
  amount_ml: number | null;
  amount_g: number | null;
  lot: string | null;
  moves: number;
}

/** What was left at a time. */
export interface Dip {
  at: string;
  left_ml: number;
}

/** The beer in it; `dips` are the latest ones in their order. */
export interface Contents extends Mark {
  gyle: string;
  volume_ml: number;
  left_ml: number;
  best_before: string | null;
  doses: Dose[];
  moves: number;
  moved: Mark | null;
  dipped: Mark | null;
  dips: Dip[];
  tasted: Mark | null;
}

export interface Clean extends Mark {
  state: "dirty" | "washed" | "passed" | "failed";
}

/** Which spile is in the shive since when; `first_at` is when it was vented, with whatever spile. */
export interface Vent extends Mark {
  spile: "hard" | "soft" | null;
  first_at: string;
}

export interface Serving {
  stillaged: Mark | null;
  vented: Vent | null;
  tapped: Mark | null;
  stooped: Mark | null;
}

/** Picked to be on sale at that time. */
export interface Planned extends Mark {
  sale_at: string;
}

/** Inside measures of a lying cask, mm, from which a dip tells what is left. */
export interface Inside {
  bung_diameter_mm: number;
  head_diameter_mm: number;
  length_mm: number;
}

/** What it costs to have, in pence a day, and when it is due back to its owner. */
export interface Hire {
  pence_a_day: number;
  due_on: string;
}

export interface Held extends Mark {
  state: "set_aside" | "missing" | "scrapped";
  why: string;
}

/** What the customer says of a container: ready to be collected, or not there at all. */
export interface Told extends Mark {
  says: "empty" | "not_here";
}

/** `on_record_since`: the day the records came to know of it, if it was out by then. */
export interface Trip extends Mark {
  customer: string;
  due_on: string | null;
  on_record_since: string | null;
  told?: Told;
}

/** Something that cannot be right as it stands. */
export interface Query {
  id: string;
  rule: string;
  entries: string[];
  at: string;
  facts: Facts;
}

/** A person's way out of a query: "right", "void:<entry>" or "renumber:<entry>:<number>". */
export interface Settlement {
  entry: string;
  way: string;
  replaces: string[];
}

export interface Standing {
  number: string;
  registered: Mark | null;
  kind: string | null;
  shape: string | null;
  capacity_ml: number | null;
  tare_g: number | null;
  owner: string | null;
  hire: Hire | null;
  inside: Inside | null;
  limit_millibar: number | null;
  place: Place | null;
  contents: Contents | null;
  clean: Clean | null;
  serving: Serving | null;
  held: Held | null;
  trip: Trip | null;
  planned: Planned | null;
  returned: Mark | null;
  fills: number;
  queries: Query[];
  settlements: Record<string, Settlement[]>;
  last: string;
}

/** Whether beer stands in it at the brewery. */
export function isFullHere({ contents, trip }: Pick<Standing, "contents" | "trip">): boolean {
  return contents !== null && trip === null;
}

/** The standing of a container of which nothing is known yet. */
export function blank(number: string): Standing {
  return {
    number,
    registered: null,
    kind: null,
    shape: null,
    capacity_ml: null,
    tare_g: null,
    owner: null,
    hire: null,
    inside: null,
    limit_millibar: null,
    place: null,
    contents: null,
    clean: null,
    serving: null,
    held: null,
    trip: null,
    planned: null,
    returned: null,
    fills: 0,
    queries: [],
    settlements: {},
    last: "",
  };
}

/** The mark that an entry leaves on what it sets. */
export function mark(entry: Entry, inferred = false): Mark {
  return { since: entry.effective_at, entry: entry.id, by: entry.person, inferred };
}
