/** Beers, gyles, places and customers, field by field. Twin of cellarapp/domain/records.py. */
import { type Entry, isRecordKind, orderKey, type RecordKind, rowType } from "./entries.ts";
import { merged, type Reading } from "./readings.ts";
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

/** Where something is, in millionths of a degree. */
export interface MapPosition {
  latitude_e6: number;
  longitude_e6: number;
}

/** What is paid for a container of each kind, in pence. */
export type Deposits = { readonly [kind in string]?: number };

/** Whose casks these are, as it stands on labels and papers. There is one: its id is "brewery". */
export interface BreweryFields {
  name: string;
  address: string;
  phone: string;
  email: string;
  /** Where this program is found in the wide world, such as https://casks.example. */
  web: string;
  /** Of GS1, 4 to 12 digits, if the brewery has licensed one. */
  company_prefix: string;
  map: MapPosition;
  /** As they are usual. */
  deposits: Deposits;
}

export interface BeerFields {
  name: string;
  abv_tenths: number;
  style: string;
  conditioning_days: number;
  best_before_days: number;
  on_sale_days: number;
  /** What is added: strengths of finings and hops by the hectolitre, CO2 wanted in the container. */
  target_co2_centivols: number;
  priming_sugar: string;
  priming_yield: "full" | "balling";
  /** Of a sugar that is bought as syrup, by its own sheet: parts of its weight, of its solids. */
  sugar_solids_tenths: number;
  sugar_fermentable_tenths: number;
  /** How strong the priming syrup is, by gravity or else by weight. */
  syrup_gravity_e4: number;
  syrup_g_per_l: number;
  /** Kegs are carbonated to it instead of being primed. */
  keg_co2_centivols: number;
  auxiliary: "none" | "auxiliary_alginate" | "auxiliary_silica";
  auxiliary_ml_per_hl: number;
  isinglass_ml_per_hl: number;
  hops_g_per_hl: number;
  limit_gravity_e4: number;
  vegan: boolean;
  cereals: string[];
  milk: boolean;
  /** What stays undrinkable in a firkin of it; other casks in proportion. */
  sediment_firkin_ml: number;
}

export interface GyleFields {
  number: string;
  beer: string;
  brewed_on: string;
  volume_ml: number;
  loss_ml: number;
  original_gravity_e4: number;
  present_gravity_e4: number;
  highest_temp_decidegc: number;
  measured_co2_centivols: number;
  yeast_thousands_per_ml: number;
  ph_hundredths: number;
  fining_temp_decidegc: number;
  sulphite_decimg_per_l: number;
}

export interface PlaceFields {
  name: string;
  role: "store" | "yard" | "stillage" | "bar";
  temp_decidegc: number;
}

export interface CustomerFields {
  name: string;
  contact: string;
  phone: string;
  email: string;
  map: MapPosition;
  /** For a kind that `deposits` does not name. */
  deposit_pence: number;
  deposits: Deposits;
  agreed_days: number;
  delivery_day: number;
  expected_days: number;
}

/** A delivery of finings, sugar or hops; its temperature is the warmest that it was kept at. */
export interface LotFields {
  what: "primings" | "auxiliary_alginate" | "auxiliary_silica" | "isinglass" | "hops";
  name: string;
  received_on: string;
  stored_temp_decidegc: number;
  opened_on: string;
  /** Of finings, by the product's sheet. */
  so2_mg_per_l: number;
}

/** A made-up washing solution. */
export interface SolutionFields {
  agent: "peracetic" | "caustic";
  name: string;
  made_at: string;
  volume_ml: number;
  made_mg_per_l: number;
  least_mg_per_l: number;
  most_uses: number;
  most_hours: number;
  thrown_away: boolean;
}

/** What is tried in one jar, in hundredths of a pint for a barrel. */
export interface TrialSample {
  isinglass_centipt: number;
  auxiliary_centipt: number;
}

/** What was read of one jar: clarity so long after the finings, or after shaking; what settled. */
export interface JarRead {
  /** Its place in the row, from 1. */
  jar: number;
  after_min?: number;
  clarity_tenths?: number;
  resettled_tenths?: number;
  sediment_ul?: number;
}

/** What was read in one go; `instead_of` names readings that do not count any more. */
export interface TrialReading extends Mark {
  jars: JarRead[];
  instead_of: string[];
  key: string;
}

/**
 * A ladder of finings doses in samples of one gyle. It starts when the last of the finings go in,
 * `auxiliary_at` being before.
 */
export interface TrialFields {
  gyle: string;
  auxiliary: "auxiliary_alginate" | "auxiliary_silica";
  auxiliary_at: string;
  started_at: string;
  sample_ml: number;
  samples: TrialSample[];
}

/** One container of a drop as it was handed over: facts, which no later entry changes. */
export interface DropLine {
  number: string;
  kind: string;
  beer: string;
  abv_tenths: number | null;
  lot: string;
  best_before: string | null;
  volume_ml: number;
  contains: string;
}

/** What a customer has asked for: so many of a beer in a kind of container. */
export interface DropAsked {
  beer: string;
  kind: string;
  count: number;
}

/** One stop of the van: what is made up for a customer, and what was handed over at its door. */
export interface DropFields {
  customer: string;
  on: string;
  asked: DropAsked[];
  numbers: string[];
  handed_over_at: string;
  lines: DropLine[];
  empties: string[];
  /** Empties taken along and counted only; they are told by number in the yard. */
  empties_counted: number;
  /** Those of them that have been told by number since. */
  matched: string[];
  /** No more of them will be told by number: somebody miscounted. */
  count_closed: boolean;
  /** For what was dropped, and for the empties that were told by number. */
  deposits_taken_pence: number;
  deposits_given_back_pence: number;
  /** How many of ours the customer had before and has since. */
  held_before: number;
  held_after: number;
  taken_by: string;
  /** Strokes, each "x y x y…" in thousandths of the glass, with a semicolon between. */
  signature: string;
  note: string;
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
/** The brewery's own value of a figure, or its own words for a text. */
export type Setting = RecordOf<{ value_millionths: number; words: string }>;
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
