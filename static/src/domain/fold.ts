/** The fold: from entries to standings (ORD-1 to ORD-4). Twin of cellarapp/domain/fold.py. */
import { resolve } from "./corrections.ts";
import { type Entry, orderKey } from "./entries.ts";
import { beInHand } from "./inference.ts";
import { raiseQuery } from "./queries.ts";
import { blank, type Standing } from "./standing.ts";
import { isHandled, STEPS } from "./steps/steps.ts";

/** A standing after an entry, and the steps that the entry implied. */
export interface Step {
  standing: Standing;
  inferred: string[];
}

/** Steps a standing forward by one entry that comes after all it has seen; the one given stays as it was. */
export function step(standing: Standing, entry: Entry): Step {
  const stepOf = (STEPS as Readonly<Record<string, (typeof STEPS)["filled"]>>)[entry.kind];
  if (!stepOf) throw new Error(`no step for an entry of kind ${entry.kind}`);
  const fresh = { ...standing };
  const handled = isHandled(entry.kind);
  const found = handled ? beInHand(fresh) : [];
  if (handled && fresh.held?.state === "scrapped") {
    raiseQuery(fresh, "after_scrapped", [fresh.held.entry, entry.id], entry, { did: entry.kind });
  }
  if (entry.clock === "impossible") {
    raiseQuery(fresh, "impossible_time", [entry.id], entry, { happened_at: entry.happened_at });
  }
  const inferred = [...(entry.kind === "found" ? [] : found), ...stepOf(fresh, entry)];
  fresh.last = orderKey(entry);
  return { standing: fresh, inferred };
}

/** Entries in the order in which things happened (ORD-1). */
export function inOrder(entries: Entry[]): Entry[] {
  return entries
    .map((entry) => ({ entry, key: orderKey(entry) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ entry }) => entry);
}

/** The standing of a container from the entries that count for it, in any order (ORD-1). */
export function fold(number: string, entries: Entry[]): Standing {
  return inOrder(entries).reduce((standing, e) => step(standing, e).standing, blank(number));
}

/** ORD-2, ORD-3: the entries that count, under the subject they count for, each once. */
export function entriesBySubject(entries: Entry[]): Map<string, Entry[]> {
  const known = new Map(entries.map((e) => [e.id, e]));
  const subjects = new Map<string, Entry[]>();
  for (const entry of known.values()) subjects.set(entry.subject, []);
  for (const [id, subject] of resolve([...known.values()]).countsFor) {
    const entry = known.get(id);
    if (!entry) continue;
    const those = subjects.get(subject);
    if (those) those.push(entry);
    else subjects.set(subject, [entry]);
  }
  return subjects;
}
