// What the phone shows of one thing: the brewery's row, stepped forward by the phone's own entries
// that the row does not hold yet. Exact unless another device's entries fall between; then the
// brewery's row replaces the guess at the next pull.

import { type Resolved, resolve } from "../domain/corrections.ts";
import { type Entry, orderKey, type RecordKind, unsent } from "../domain/entries.ts";
import { inOrder, step } from "../domain/fold.ts";
import { type AnyRecord, blankRecord, setFields } from "../domain/records.ts";
import { blank, type Standing } from "../domain/standing.ts";
import { canonical } from "./canonical.ts";
import type { Row, Vouched } from "./kept.ts";
import { type Own, type OwnEntries, targetOf } from "./own-entries.ts";

/** A view, and whether a correction in it can only be worked out by the brewery. */
export interface View<D> {
  doc: D | undefined;
  waits: boolean;
}

/** Own entries about one thing that its row lacks, with all that their corrections are about. */
interface Lacking {
  entries: Entry[];
  /** Targets of corrections that the row does hold. */
  held: Own[];
  /** Whether a correction is about an entry that this phone does not have. */
  unknown: boolean;
  resolved: Resolved;
}

/** Whether a row was made with an entry that the brewery took at a position. */
export const holds = (row: Row | undefined, at: Vouched | null, own: Own): boolean => {
  if (own.where === "attention") return false;
  if (own.where === "brewery") {
    if (at === null || own.kept.epoch !== at.epoch) return false;
    return own.kept.position <= Math.max(at.whole, row?.position ?? 0);
  }
  // Offered again after a restore: what lies before the row's last entry is likely in it.
  return own.kept.again === true && row !== undefined && orderOf(own) <= lastOf(row);
};

const orderOf = (own: Own): string => orderKey(unsent(own.kept.entry));
const lastOf = (row: Row): string => ("last" in row.doc ? row.doc.last : "");

const lackingFrom = (pending: Own[], row: Row | undefined, at: Vouched | null, own: OwnEntries) => {
  const lacking = pending.filter((one) => !holds(row, at, one));
  const gathered = new Map(lacking.map((one) => [one.kept.entry.id, one]));
  const held: Own[] = [];
  let unknown = false;
  // Targets of targets are walked too: the map grows while it is read.
  for (const one of gathered.values()) {
    const target = targetOf(one.kept.entry);
    if (target === null || gathered.has(target)) continue;
    const found = own.byId(target);
    if (found === undefined || found.where === "attention") {
      unknown = true;
      continue;
    }
    gathered.set(target, found);
    held.push(found);
  }
  const all = [...gathered.values()].map((one) => unsent(one.kept.entry));
  const entries = lacking.map((one) => unsent(one.kept.entry));
  return { entries, held, unknown, resolved: resolve(all) } satisfies Lacking;
};

export const containerView = (
  number: string,
  row: Row | undefined,
  at: Vouched | null,
  pending: Own[],
  own: OwnEntries,
): View<Standing> => {
  const rowDoc = row?.doc as Standing | undefined;
  if (pending.length === 0) return { doc: rowDoc, waits: false };
  const lacking = lackingFrom(pending, row, at, own);
  if (lacking.entries.length === 0) return { doc: rowDoc, waits: false };
  const { countsFor } = lacking.resolved;
  let doc = rowDoc ?? blank(number);
  let waits = lacking.unknown;
  const steps = lacking.entries.filter((entry) => countsFor.get(entry.id) === number);
  for (const target of newestFirst(lacking.held)) {
    const { entry } = target.kept;
    const counts = countsFor.get(entry.id) === number;
    if (entry.subject === number && !counts) {
      const without = liftedOut(doc, target);
      waits ||= without === null;
      doc = without ?? doc;
    } else if (entry.subject !== number && counts) {
      if (orderOf(target) > doc.last) steps.push(unsent(entry));
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
  const { entries, held, unknown, resolved } = lackingFrom(pending, row, at, own);
  let doc = rowDoc ?? blankRecord(type);
  let drawnMl = 0;
  for (const entry of entries) {
    if (!resolved.countsFor.has(entry.id)) continue;
    if (entry.kind === "filled") drawnMl += volumeFrom(entry, id);
    else doc = setFields(doc, entry);
  }
  let waits = unknown;
  for (const target of held) {
    const { entry } = target.kept;
    if (resolved.countsFor.has(entry.id)) continue;
    if (entry.kind === "filled") drawnMl -= volumeFrom(unsent(entry), id);
    else waits = true; // which value stood before, only the brewery knows
  }
  if (type === "gyle") doc = { ...doc, drawn_ml: (doc.drawn_ml ?? 0) + drawnMl };
  return { doc, waits };
};

const volumeFrom = (entry: Entry, gyle: string): number =>
  entry.kind === "filled" && entry.facts["gyle"] === gyle ? Number(entry.facts["volume_ml"]) : 0;
