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

export interface Contents extends Mark {
  gyle: string;
  volume_ml: number;
  left_ml: number;
  best_before: string | null;
  moves: number;
  dipped: Mark | null;
}

export interface Clean extends Mark {
  state: "dirty" | "washed" | "passed" | "failed";
}

export interface Vent extends Mark {
  spile: "hard" | "soft" | null;
}

export interface Serving {
  stillaged: Mark | null;
  vented: Vent | null;
  tapped: Mark | null;
}

export interface Held extends Mark {
  state: "set_aside" | "missing" | "scrapped";
  why: string;
}

export interface Trip extends Mark {
  customer: string;
  due_on: string | null;
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
  place: Place | null;
  contents: Contents | null;
  clean: Clean | null;
  serving: Serving | null;
  held: Held | null;
  trip: Trip | null;
  returned: Mark | null;
  fills: number;
  queries: Query[];
  settlements: Record<string, Settlement[]>;
  last: string;
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
    place: null,
    contents: null,
    clean: null,
    serving: null,
    held: null,
    trip: null,
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
