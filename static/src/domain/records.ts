/** Beers, gyles, places and customers, field by field. Twin of cellarapp/domain/records.py. */
import { type Entry, isRecordKind, orderKey, type RecordKind, rowType } from "./entries.ts";
import { merged, type Reading } from "./readings.ts";
import type {
  BeerFields,
  BreweryFields,
  CustomerFields,
  DropFields,
  GyleFields,
  JarRead,
  LotFields,
  PlaceFields,
  SolutionFields,
  TrialFields,
} from "./record-fields.ts";
import { type Mark, mark } from "./standing.ts";

/** What came of asking: somebody answered, nobody did, they are not there, or it was in writing. */
export type ChaseOutcome = "spoke" | "no_answer" | "not_there" | "wrote";

/** The last time somebody asked a customer for containers, and what was promised. */
export interface Chase extends Mark {
  words: string;
  outcome: ChaseOutcome | null;
  promised_on: string | null;
  /** The day before which nobody needs to ask again. */
  ask_again_on: string | null;
}

/** One before the last; `key` puts them in order. */
export interface EarlierChase extends Chase {
  key: string;
}

/** Chases before the last that are kept with a customer; the ledger has all. */
const MOST_EARLIER = 4;

/** A solution's strength as it was titrated; `key` puts checks in order. */
export interface Check extends Mark {
  strength_mg_per_l: number;
  key: string;
}

/** A link to the page of a customer: of its secret the SHA-256; `key` puts links in order. */
export interface Link extends Mark {
  hash: string;
  key: string;
}

/** LINK-1: so many of the latest work. */
const MOST_LINKS = 20;

/** The fields of one thing, and for each the order key of the entry that set it. */
export interface RecordOf<Fields> {
  fields: Partial<Fields> & { retired?: boolean };
  set_by: Record<string, string>;
}

/** What was read in one go; `instead_of` names readings that do not count any more. */
export interface TrialReading extends Mark {
  jars: JarRead[];
  instead_of: string[];
  key: string;
}

export type Drop = RecordOf<DropFields>;
export type Brewery = RecordOf<BreweryFields>;
export type Beer = RecordOf<BeerFields>;
export type Gyle = RecordOf<GyleFields> & { drawn_ml: number };
export type Place = RecordOf<PlaceFields> & { temperatures: Reading[] };
export type Customer = RecordOf<CustomerFields> & {
  chase: Chase | null;
  earlier?: EarlierChase[];
  links?: Link[];
};
/** The brewery's own value of a figure, its values of a list, or its own words for a text. */
export type Setting = RecordOf<{
  value_millionths: number;
  values_millionths: number[];
  words: string;
}>;
export type Lot = RecordOf<LotFields>;
export type Solution = RecordOf<SolutionFields> & { uses: number; checks: Check[] };
export type Trial = RecordOf<TrialFields> & { readings?: TrialReading[] };
export type AnyRecord = RecordOf<Record<string, unknown>> & {
  drawn_ml?: number;
  chase?: Chase | null;
  earlier?: EarlierChase[];
  links?: Link[];
  temperatures?: Reading[];
  uses?: number;
  checks?: Check[];
  readings?: TrialReading[];
};

export function blankRecord(kind: RecordKind): AnyRecord {
  const record = { fields: {}, set_by: {} };
  if (kind === "gyle") return { ...record, drawn_ml: 0 };
  if (kind === "customer") return { ...record, chase: null };
  if (kind === "place") return { ...record, temperatures: [] };
  if (kind === "solution") return { ...record, uses: 0, checks: [] };
  return record;
}

/** The record after an entry; they may come in any order. A field set to null is empty again. */
export function stepRecord(record: AnyRecord, entry: Entry): AnyRecord {
  const { facts, kind } = entry;
  if (isRecordKind(kind)) return setFields(record, entry);
  if (kind === "chased") return chased(record, entry);
  if (kind === "erased") return erased(record, entry);
  if (kind === "linked") return linked(record, entry);
  if (kind === "unlinked") return unlinked(record, entry);
  if (kind === "temperature") {
    return { ...record, temperatures: merged(record.temperatures ?? [], facts.series) };
  }
  if (kind === "solution_used") return { ...record, uses: (record.uses ?? 0) + facts.uses };
  if (kind === "solution_checked") {
    const { strength_mg_per_l } = facts;
    const check: Check = { ...mark(entry), strength_mg_per_l, key: orderKey(entry) };
    return { ...record, checks: inOrder([...(record.checks ?? []), check]) };
  }
  if (kind !== "trial_read") return record;
  const { jars, instead_of = [] } = facts;
  const reading: TrialReading = { ...mark(entry), jars, instead_of, key: orderKey(entry) };
  return { ...record, readings: inOrder([...(record.readings ?? []), reading]) };
}

const inOrder = <Keyed extends { key: string }>(all: Keyed[]): Keyed[] =>
  all.sort((a, b) => (a.key < b.key ? -1 : 1));

function setFields(record: AnyRecord, entry: Entry): AnyRecord {
  const key = orderKey(entry);
  const fields: Record<string, unknown> = { ...record.fields };
  const setBy = { ...record.set_by };
  for (const [name, value] of Object.entries(entry.facts)) {
    if (key <= (record.set_by[name] ?? "")) continue;
    if (value === null) delete fields[name];
    else fields[name] = value;
    setBy[name] = key;
  }
  return { ...record, fields, set_by: setBy };
}

/** CHASE-1: the last one stands, and a few before it are kept, in whatever order they arrive. */
function chased(record: AnyRecord, entry: Entry): AnyRecord {
  const key = orderKey(entry);
  const { chase: lastKey = "" } = record.set_by;
  const { words = "", outcome = null, promised_on = null, ask_again_on = null } = entry.facts;
  const isErased = key < (record.set_by.erased ?? "");
  const made: Chase = {
    ...mark(entry),
    words: isErased ? "" : words,
    outcome,
    promised_on,
    ask_again_on,
  };
  if (key <= lastKey) return withEarlier(record, made, key);
  const { chase: before = null } = record;
  const after = { ...record, chase: made, set_by: { ...record.set_by, chase: key } };
  return before === null ? after : withEarlier(after, before, lastKey);
}

function withEarlier(record: AnyRecord, chase: Chase, key: string): AnyRecord {
  const kept = inOrder([...(record.earlier ?? []), { ...chase, key }]);
  return { ...record, earlier: kept.slice(-MOST_EARLIER) };
}

/** LINK-1: the links that work: made after all were last stopped, and the latest of them. */
function working(record: AnyRecord, links: Link[]): AnyRecord {
  const { unlinked: stopped = "" } = record.set_by;
  const left = inOrder(links.filter(({ key }) => key > stopped));
  return { ...record, links: left.slice(-MOST_LINKS) };
}

function linked(record: AnyRecord, entry: Entry): AnyRecord {
  const link: Link = { ...mark(entry), hash: entry.facts.hash, key: orderKey(entry) };
  return working(record, [...(record.links ?? []), link]);
}

function unlinked(record: AnyRecord, entry: Entry): AnyRecord {
  const set_by = { ...record.set_by };
  const key = orderKey(entry);
  if (key > (set_by.unlinked ?? "")) set_by.unlinked = key;
  return working({ ...record, set_by }, record.links ?? []);
}

const PERSONAL = ["contact", "phone", "email", "map"];

/** What was said of a person before is gone; the name only if the erasure says so. */
function erased(record: AnyRecord, entry: Entry): AnyRecord {
  const key = orderKey(entry);
  const fields: Record<string, unknown> = { ...record.fields };
  const setBy = { ...record.set_by };
  for (const name of entry.facts.name ? [...PERSONAL, "name"] : PERSONAL) {
    if (key <= (setBy[name] ?? "")) continue;
    delete fields[name];
    setBy[name] = key;
  }
  let { chase = null } = record;
  if (chase !== null && key > (setBy.chase ?? "")) chase = { ...chase, words: "" };
  if (key > (setBy.erased ?? "")) setBy.erased = key;
  const { earlier } = record;
  if (earlier === undefined) return { ...record, fields, set_by: setBy, chase };
  const blanked = earlier.map((one) => (key > one.key ? { ...one, words: "" } : one));
  return { ...record, fields, set_by: setBy, chase, earlier: blanked };
}

/** ORD-2: a record from its entries in any order, each of them once. */
export function foldRecord(kind: RecordKind, entries: Entry[]): AnyRecord {
  const each = [...new Map(entries.map((e) => [e.id, e])).values()];
  return each.filter((e) => rowType(e.kind) === kind).reduce(stepRecord, blankRecord(kind));
}

/** What the fills that count have drawn from a gyle, mL. */
export function drawnMl(gyle: string, counting: Entry[]): number {
  return counting
    .filter((e) => e.kind === "filled" && e.facts.gyle === gyle)
    .reduce((sum, e) => sum + Number(e.facts.volume_ml), 0);
}
