// What the phone shows of one thing: the brewery's row, stepped forward by the phone's own entries
// that the row does not hold yet. Exact unless another device's entries fall between; then the
// brewery's row replaces the guess at the next pull.

import { type Resolved, resolve } from "../domain/corrections.ts";
import {
  type Entry,
  isContainerKind,
  isCorrectionKind,
  isRecordKind,
  orderKey,
  type RecordKind,
  unsent,
} from "../domain/entries.ts";
import { inOrder, step } from "../domain/fold.ts";
import { type AnyRecord, blankRecord, stepRecord } from "../domain/records.ts";
import { blank, type Standing } from "../domain/standing.ts";
import { targetOf } from "./about.ts";
import { canonical } from "./canonical.ts";
import type { Row, Vouched } from "./kept.ts";
import type { Own, OwnEntries } from "./own-entries.ts";

/** A view, and whether a correction in it can only be worked out by the brewery. */
export interface View<D> {
  doc: D | undefined;
  waits: boolean;
}

/** Own entries that bear on one row: those that it lacks, and those that it holds. */
interface Bearing {
  lacking: Entry[];
  held: Own[];
  /** What the entries counted for when the row was made, and what they count for now. */
  before: Resolved;
  now: Resolved;
  /** Whether a correction is about an entry that this phone does not have. */
  unknown: boolean;
}

/** Whether a row was made with an entry that the brewery took at a position. */
export const holds = (row: Row | undefined, at: Vouched | null, own: Own): boolean => {
  if (own.where === "attention") return false;
  if (own.where === "brewery") {
    if (at === null || own.kept.epoch !== at.epoch) return false;
    return own.kept.position <= Math.max(at.whole, row?.position ?? 0);
  }
  // Offered again after a restore: what lies before the row's last entry is likely in it.
  if (own.kept.again !== true || row === undefined) return false;
  if ("last" in row.doc) return orderOf(own) <= row.doc.last;
  return !isRecordKind(own.kept.entry.kind); // a field that is set twice is only set
};

const orderOf = (own: Own): string => orderKey(unsent(own.kept.entry));

/** Corrections reach beyond the row: what they are about, and what else corrects that. */
const bearingOn = (pending: Own[], row: Row | undefined, at: Vouched | null, own: OwnEntries) => {
  const gathered = new Map<string, Own>();
  let unknown = false;
  const gather = (one: Own) => gathered.set(one.kept.entry.id, one);
  for (const one of pending) if (!holds(row, at, one)) gather(one);
  // The map grows while it is read.
  for (const [id, one] of gathered) {
    for (const correction of own.correctionsOf(id)) gather(correction);
    const target = targetOf(one.kept.entry);
    if (target === null) continue;
    const found = own.byId(target);
    if (found === undefined || found.where === "attention") unknown = true;
    else gather(found);
  }
  const all = [...gathered.values()];
  const held = all.filter((one) => holds(row, at, one));
  const lacking = all.filter((one) => !held.includes(one)).map(asEntry);
  const before = resolve(held.map(asEntry));
  return { lacking, held, before, now: resolve(all.map(asEntry)), unknown } satisfies Bearing;
};

const asEntry = ({ kept }: Own): Entry => unsent(kept.entry);

export const containerView = (
  number: string,
  row: Row | undefined,
  at: Vouched | null,
  pending: Own[],
  own: OwnEntries,
): View<Standing> => {
  const rowDoc = row?.doc as Standing | undefined;
  if (pending.length === 0) return { doc: rowDoc, waits: false };
  const { lacking, held, before, now, unknown } = bearingOn(pending, row, at, own);
  let doc = rowDoc ?? blank(number);
  let waits = unknown;
  const counting = lacking.filter((entry) => now.countsFor.get(entry.id) === number);
  // An entry that a later release of the app has left here is not understood by this one.
  const steps = counting.filter(({ kind }) => isContainerKind(kind) || isCorrectionKind(kind));
  waits ||= steps.length < counting.length;
  for (const one of newestFirst(held)) {
    const { id } = one.kept.entry;
    const [counted, counts] = [before, now].map(({ countsFor }) => countsFor.get(id) === number);
    if (counted && !counts) {
      const without = liftedOut(doc, one);
      waits ||= without === null;
      doc = without ?? doc;
    } else if (!counted && counts) {
      if (orderOf(one) > doc.last) steps.push(asEntry(one));
      else waits = true;
    }
  }
  for (const entry of inOrder(steps)) doc = step(doc, entry).standing;
  const known = rowDoc !== undefined || steps.length > 0;
  return { doc: known ? doc : undefined, waits };
};

const newestFirst = (entries: Own[]): Own[] =>
  [...entries].sort((a, b) => (orderOf(a) < orderOf(b) ? 1 : -1));

/** The standing before an entry, if nothing else has come to it since; otherwise null. */
const liftedOut = (doc: Standing, target: Own): Standing | null => {
  const { before } = target.kept;
  if (before === null || !("last" in before)) return null;
  const after = step(before, unsent(target.kept.entry)).standing;
  return canonical(after) === canonical(doc) ? before : null;
};

export const recordView = (
  type: RecordKind,
  id: string,
  row: Row | undefined,
  at: Vouched | null,
  pending: Own[],
  own: OwnEntries,
): View<AnyRecord> => {
  const rowDoc = row?.doc as AnyRecord | undefined;
  if (pending.length === 0) return { doc: rowDoc, waits: false };
  const { lacking, held, before, now, unknown } = bearingOn(pending, row, at, own);
  let doc = rowDoc ?? blankRecord(type);
  let drawnMl = 0;
  for (const entry of lacking) {
    if (!now.countsFor.has(entry.id)) continue;
    if (entry.kind === "filled") drawnMl += volumeFrom(entry, id);
    else if (entry.subject === id) doc = stepRecord(doc, entry);
  }
  for (const entry of held.map(asEntry)) {
    const [counted, counts] = [before, now].map(({ countsFor }) => countsFor.has(entry.id));
    if (counted !== counts) drawnMl += counts ? volumeFrom(entry, id) : -volumeFrom(entry, id);
  }
  if (type === "gyle") doc = { ...doc, drawn_ml: (doc.drawn_ml ?? 0) + drawnMl };
  return { doc, waits: unknown };
};

const volumeFrom = (entry: Entry, gyle: string): number =>
  entry.kind === "filled" && entry.facts["gyle"] === gyle ? Number(entry.facts["volume_ml"]) : 0;
