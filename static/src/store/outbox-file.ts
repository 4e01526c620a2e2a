// The outbox as a file: when a phone cannot reach the brewery, its entries can be carried there.

import type { MadeEntry } from "../domain/entries.ts";
import type { Kept } from "./kept.ts";
import type { OwnChange, Phone } from "./phone.ts";
import { NotPossible } from "./trouble.ts";

/** No page's id: what is read in was never timed by a stopwatch of this phone. */
const ANOTHER_PHONE = "";

const WHAT = "cellarapp outbox";

interface OutboxFile {
  what: typeof WHAT;
  version: 1;
  device: string;
  saved_at: string;
  entries: {
    entry: MadeEntry;
    saved_at: string;
    offset_ms: number;
    /** When that phone had last heard of the brewery before. */
    heard_at?: string | null;
  }[];
}

export interface Imported {
  /** Entries that now wait on this phone. */
  added: number;
  /** Entries that this phone had already. */
  known: number;
}

export const exportOutbox = (phone: Phone): Blob => {
  const waiting = [...phone.own.all].filter(({ where }) => where !== "brewery");
  const file: OutboxFile = {
    what: WHAT,
    version: 1,
    device: phone.device,
    saved_at: phone.clock.now(),
    entries: waiting
      .sort((a, b) => a.n - b.n)
      .map(({ kept: { entry, savedAt, offsetMs, watch } }) => {
        const heard_at = watch?.heardAt ?? null;
        return { entry, saved_at: savedAt, offset_ms: offsetMs, heard_at };
      }),
  };
  return new Blob([JSON.stringify(file, null, 1)], { type: "application/json" });
};

/**
 * Entries keep their device and number. Reading a file twice changes nothing, not even twice at
 * once: what the outbox holds is looked at in the transaction that adds to it.
 */
export const importOutbox = async (phone: Phone, file: Blob): Promise<Imported> => {
  const entries = entriesIn(await file.text());
  const changes = await phone.connection.write(["outbox"], async (transaction) => {
    const outbox = transaction.objectStore("outbox");
    const there = new Set((await outbox.getAll()).map(({ entry }) => entry.id));
    const adding: Promise<OwnChange>[] = [];
    for (const one of entries) {
      const { id } = one.entry;
      if (there.has(id) || phone.own.byId(id) !== undefined) continue;
      there.add(id);
      const kept = keptFrom(one);
      adding.push(outbox.add(kept).then((n) => [n, { where: "phone", n, kept }]));
    }
    return Promise.all(adding);
  });
  phone.ownChanged(changes);
  phone.tabs.tell({ about: "own", keys: changes.map(([n]) => n) });
  return { added: changes.length, known: entries.length - changes.length };
};

type InFile = OutboxFile["entries"][number];

const keptFrom = ({ entry, saved_at: savedAt, offset_ms: offsetMs, heard_at }: InFile): Kept => {
  const watch = { page: ANOTHER_PHONE, ms: 0, heardAt: heard_at ?? null };
  return { entry, before: null, savedAt, offsetMs, watch };
};

const entriesIn = (text: string): OutboxFile["entries"] => {
  const file = parsed(text) as Partial<OutboxFile> | null;
  if (file?.what !== WHAT || !Array.isArray(file.entries) || !file.entries.every(isKept)) {
    throw new NotPossible("This file does not hold the entries of a phone. Nothing was read in.");
  }
  return file.entries;
};

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null; // said in words by the caller
  }
};

const isKept = (one: InFile | null): boolean =>
  typeof one?.saved_at === "string" &&
  typeof one.offset_ms === "number" &&
  !Number.isNaN(Date.parse(one.saved_at)) &&
  ["id", "device", "kind", "subject", "happened_at", "person"].every(
    (name) => typeof one.entry?.[name as keyof MadeEntry] === "string",
  ) &&
  Number.isInteger(one.entry.seq) &&
  typeof one.entry.facts === "object";
