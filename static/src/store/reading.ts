// Reading the phone's storage into memory: all of it at the start, parts of it when another tab
// has changed them.

import { NO_ROWS_YET, pagesOf } from "./first-load.ts";
import type { Row, RowKey } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import type { Own } from "./own-entries.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { ReadTransaction } from "./schema.ts";

/** Who this device is; made once, by whichever tab comes first. */
export const readIdentity = async (phone: Phone): Promise<void> => {
  const { id, running } = await phone.connection.write(["meta"], async (transaction) => {
    const known = await readMeta(transaction, "device");
    const running = await readMeta(transaction, "running");
    if (known !== undefined) return { id: known.id, running };
    const made = { id: phone.newId(), madeAt: phone.clock.now() };
    await writeMeta(transaction, "device", made);
    return { id: made.id, running };
  });
  phone.device = id;
  if (running !== undefined) phone.running = running;
};

export const readEverything = async (phone: Phone): Promise<void> => {
  const found = await phone.connection.read(
    ["pages", "overlay", "outbox", "sent", "attention", "meta"],
    async (transaction) => {
      const [rows, own, clock, syncedAt] = await Promise.all([
        rowsIn(transaction),
        ownIn(transaction),
        readMeta(transaction, "clock"),
        readMeta(transaction, "syncedAt"),
      ]);
      return { ...rows, own, clock, syncedAt };
    },
  );
  if (found.clock !== undefined) phone.clock.follow(found.clock);
  phone.syncedAt = found.syncedAt ?? null;
  phone.loading = found.loading;
  phone.own.clear();
  for (const own of found.own) phone.own.put(own);
  phone.rowsReplaced(found.rows, found.rowsAt);
  phone.ownTurn.value += 1;
};

/** The rows of the finished load; of an unfinished first one, those that have come so far. */
const rowsIn = async (transaction: ReadTransaction) => {
  const [rowsAt = null, loading = null] = await Promise.all([
    readMeta(transaction, "rows"),
    readMeta(transaction, "loading"),
  ]);
  const generation = (rowsAt ?? loading ?? NO_ROWS_YET).generation;
  const [pages, changed] = await Promise.all([
    transaction.objectStore("pages").getAll(pagesOf(generation)),
    transaction.objectStore("overlay").getAll(),
  ]);
  const rows: Row[] = pages.flat();
  rows.push(...changed);
  return { rows, rowsAt, loading };
};

const ownIn = async (transaction: ReadTransaction): Promise<Own[]> => {
  const places = [
    ["phone", "outbox"],
    ["brewery", "sent"],
    ["attention", "attention"],
  ] as const;
  const found = await Promise.all(
    places.map(async ([where, name]) => {
      const store = transaction.objectStore(name);
      const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
      return values.map((kept, at) => ({ where, n: keys[at], kept }) as Own);
    }),
  );
  // In the order in which they were made, so that a correction comes after its target.
  return found.flat().sort((a, b) => a.n - b.n);
};

export const rereadOwn = async (phone: Phone, keys: readonly number[]): Promise<void> => {
  const changes = await phone.connection.read(["outbox", "sent", "attention"], (transaction) =>
    Promise.all(keys.map((n) => oneOwn(transaction, n))),
  );
  phone.ownChanged(changes);
};

const oneOwn = async (transaction: ReadTransaction, n: number): Promise<OwnChange> => {
  const [phone, brewery, attention] = await Promise.all([
    transaction.objectStore("outbox").get(n),
    transaction.objectStore("sent").get(n),
    transaction.objectStore("attention").get(n),
  ]);
  if (phone !== undefined) return [n, { where: "phone", n, kept: phone }];
  if (brewery !== undefined) return [n, { where: "brewery", n, kept: brewery }];
  if (attention !== undefined) return [n, { where: "attention", n, kept: attention }];
  return [n, null];
};

/** Rows that another tab has changed: just these, if this tab has missed no change before. */
export const rereadRows = async (
  phone: Phone,
  keys: readonly RowKey[] | null,
  revision: number,
): Promise<void> => {
  const held = phone.rowsAt;
  if (held !== null && held.revision >= revision) return;
  if (keys === null || held === null || held.revision + 1 !== revision) return rereadAllRows(phone);
  const { rows, at } = await phone.connection.read(["overlay", "meta"], async (transaction) => {
    const overlay = transaction.objectStore("overlay");
    const found = await Promise.all(keys.map((key) => overlay.get(key)));
    return { rows: found, at: await readMeta(transaction, "rows") };
  });
  // A further change has come in between: what was read belongs to that one.
  if (at?.revision !== revision || rows.includes(undefined)) return rereadAllRows(phone);
  phone.rowsChanged(rows as Row[], at);
};

export const rereadAllRows = async (phone: Phone): Promise<void> => {
  const { rows, rowsAt, loading } = await phone.connection.read(
    ["pages", "overlay", "meta"],
    rowsIn,
  );
  phone.loading = loading;
  phone.rowsReplaced(rows, rowsAt);
};
