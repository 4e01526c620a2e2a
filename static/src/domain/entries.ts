/** An entry: one fact, recorded once, on one device. Twin of cellarapp/domain/entries.py. */

/** Facts of every kind, by name; which kind has which is in cellarapp/ledger/forms. */
// biome-ignore lint/suspicious/noExplicitAny: facts are what the kind says; the server's forms judge them.
export type Facts = Record<string, any>;

export const CONTAINER_KINDS = [
  "registered",
  "washed",
  "inspected",
  "filled",
  "dosed",
  "moved",
  "stillaged",
  "vented",
  "tapped",
  "stooped",
  "dipped",
  "checked",
  "planned",
  "emptied",
  "sent",
  "returned",
  "set_aside",
  "released",
  "missing",
  "found",
  "scrapped",
  "noted",
  "reported",
  "told",
  "forgotten",
] as const;
export const CORRECTION_KINDS = ["voided", "renumbered", "settled"] as const;
export const RECORD_KINDS = [
  "brewery",
  "beer",
  "gyle",
  "place",
  "customer",
  "setting",
  "lot",
  "solution",
  "trial",
  "drop",
] as const;

/** What happens to a thing that is no container, and the kind of that thing. */
export const HAPPENINGS = {
  chased: "customer",
  erased: "customer",
  linked: "customer",
  unlinked: "customer",
  temperature: "place",
  solution_used: "solution",
  solution_checked: "solution",
  trial_read: "trial",
} as const;

export type ContainerEntryKind = (typeof CONTAINER_KINDS)[number];
export type CorrectionKind = (typeof CORRECTION_KINDS)[number];
export type RecordKind = (typeof RECORD_KINDS)[number];
export type Kind = ContainerEntryKind | CorrectionKind | RecordKind | keyof typeof HAPPENINGS;

const among =
  <K extends string>(kinds: readonly K[]) =>
  (kind: string): kind is K =>
    (kinds as readonly string[]).includes(kind);

export const isContainerKind = among(CONTAINER_KINDS);
export const isCorrectionKind = among(CORRECTION_KINDS);
export const isRecordKind = among(RECORD_KINDS);

/** As the device makes it and sends it. */
export interface MadeEntry {
  id: string;
  device: string;
  seq: number;
  kind: Kind;
  subject: string;
  happened_at: string;
  person: string;
  facts: Facts;
  rules: number;
}

/** As the fold reads it; on the phone `effective_at` is the time it was made, until the brewery says. */
export interface Entry extends MadeEntry {
  effective_at: string;
  clock: "ok" | "corrected" | "impossible";
}

/** An entry of this phone as it is folded before the brewery has seen it. */
export function unsent(entry: MadeEntry): Entry {
  return { ...entry, effective_at: entry.happened_at, clock: "ok" };
}

/** ORD-1: text that sorts in the order in which things happened, then device, running number, id. */
export function orderKey(entry: Entry): string {
  const { effective_at, device, seq, id } = entry;
  return `${effective_at}/${device}/${String(seq).padStart(10, "0")}/${id}`;
}

/** What an entry of this kind is about: a container, or the kind of record. */
export function rowType(kind: Kind): RecordKind | "container" {
  if (isRecordKind(kind)) return kind;
  return kind in HAPPENINGS ? HAPPENINGS[kind as keyof typeof HAPPENINGS] : "container";
}
