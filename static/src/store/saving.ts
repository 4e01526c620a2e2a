// Saving entries: one strict transaction holds the entries and the phone's running number.
// Only after the browser has said that it is on the disk does anybody hear that it was saved.

import { type Facts, type Kind, type MadeEntry, rowType, unsent } from "../domain/entries.ts";
import { step } from "../domain/fold.ts";
import { isNumber } from "../domain/numbers.ts";
import { type AnyRecord, blankRecord, stepRecord } from "../domain/records.ts";
import { RULES_VERSION } from "../domain/rules.ts";
import { blank, type Standing } from "../domain/standing.ts";
import type { Kept, Reckoning, Running } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { WriteTransaction } from "./schema.ts";

/** What a person wants to record. */
export interface Draft {
  kind: Kind;
  subject: string;
  facts: Facts;
  /** When it happened, if not now. */
  happenedAt?: string;
  /** The clocks that `happenedAt` was reckoned by, if not those of now. */
  reckoning?: Reckoning;
}

export interface Saved {
  entry: MadeEntry;
}

/** What else belongs into the same transaction. */
type Alongside = (transaction: WriteTransaction) => Promise<OwnChange[]>;

export const save = async (
  phone: Phone,
  drafts: readonly Draft[],
  person: string,
  alongside: Alongside = async () => [],
): Promise<Saved[]> => {
  const changes = await phone.connection.write(
    ["outbox", "attention", "meta"],
    async (transaction) => {
      const stored = (await readMeta(transaction, "running")) ?? { seq: 0, lastAt: "" };
      const running = { ...stored, seq: Math.max(stored.seq, phone.numberedTo) };
      const { made, next } = makeEntries(phone, drafts, person, running);
      const outbox = transaction.objectStore("outbox");
      const [keys, others] = await Promise.all([
        // Async, so that what cannot be stored fails like any other request.
        Promise.all(made.map(async (kept) => outbox.add(kept))),
        alongside(transaction),
        writeMeta(transaction, "running", next),
      ]);
      const added = made.map((kept, at): OwnChange => {
        const n = keys[at] as number;
        return [n, { where: "phone", n, kept }];
      });
      return { made, all: [...added, ...others], next };
    },
  );
  phone.running = changes.next;
  phone.ownChanged(changes.all);
  phone.tabs.tell({ about: "own", keys: changes.all.map(([n]) => n) });
  return changes.made.map(({ entry }) => ({ entry }));
};

const makeEntries = (
  phone: Phone,
  drafts: readonly Draft[],
  person: string,
  running: Running,
): { made: Kept[]; next: Running } => {
  const { clock } = phone;
  const now = clock.nextAfter(running.lastAt);
  const reckoning = clock.reckoning();
  /** Several entries may be about one container: each finds it as the one before has left it. */
  const latest = new Map<string, Standing | AnyRecord>();
  const made = drafts.map((draft, at): Kept => {
    const entry: MadeEntry = {
      id: phone.newId(),
      device: phone.device,
      seq: running.seq + 1 + at,
      kind: draft.kind,
      subject: draft.subject,
      happened_at: draft.happenedAt ?? now,
      person,
      facts: draft.facts,
      rules: RULES_VERSION,
    };
    const before = latest.get(entry.subject) ?? standsNow(phone, entry);
    latest.set(entry.subject, after(before, entry));
    const { savedAt, offsetMs, watch } = draft.reckoning ?? reckoning;
    const kept = { entry, before, savedAt, offsetMs };
    return watch === undefined ? kept : { ...kept, watch };
  });
  return { made, next: { seq: running.seq + drafts.length, lastAt: now } };
};

const standsNow = (phone: Phone, entry: MadeEntry): Standing | AnyRecord => {
  const { subject } = entry;
  if (isNumber(subject)) return phone.views.containers.get(subject) ?? blank(subject);
  const type = rowType(entry.kind);
  if (type === "container") return blank(subject); // a correction of an entry about no container
  return phone.views.record(type, subject) ?? blankRecord(type);
};

const after = (before: Standing | AnyRecord, entry: MadeEntry): Standing | AnyRecord =>
  "last" in before ? step(before, unsent(entry)).standing : stepRecord(before, unsent(entry));
