// Reading the phone's storage into memory: at the start what the first screen shows and then the
// rest, afterwards the parts that another tab has changed.

import { NO_ROWS_YET } from "./first-load.ts";
import type { Loading, Row, RowKey, RowsAt } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import type { Own } from "./own-entries.ts";
import { allRowsIn, firstRowsIn } from "./pages.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { ReadTransaction } from "./schema.ts";

/** Who this device is; made once, by whichever tab comes first. */
export const readIdentity = async (phone: Phone): Promise<void> => {
  const { device, running } = await phone.connection.read(["meta"], async (transaction) => ({
    device: await readMeta(transaction, "device"),
    running: await readMeta(transaction, "running"),
  }));
  phone.device = device?.id ?? (await makeIdentity(phone));
  if (running !== undefined) phone.running = running;
};

const makeIdentity = (phone: Phone): Promise<string> =>
  phone.connection.write(["meta"], async (transaction) => {
    const known = await readMeta(transaction, "device");
    if (known !== undefined) return known.id;
    const made = { id: phone.newId(), madeAt: phone.clock.now() };
    await writeMeta(transaction, "device", made);
    return made.id;
  });

/**
 * All that the first screen shows: the phone's own entries and the rows that it names. Answers
 * whether they were found: a release before this one did not keep rows by their type.
 */
export const readFirst = async (phone: Phone): Promise<boolean> => {
  const found = await phone.connection.read(
    ["pages", "overlay", "outbox", "sent", "attention", "meta"],
    async (transaction) => {
      const rows = rowsWith(firstRowsIn, transaction);
      const [own, clock, syncedAt] = await Promise.all([
        ownIn(transaction),
        readMeta(transaction, "clock"),
        readMeta(transaction, "syncedAt"),
      ]);
      return { ...(await rows), own, clock, syncedAt };
    },
  );
  if (found.clock !== undefined) phone.clock.follow(found.clock);
  phone.syncedAt = found.syncedAt ?? null;
  phone.own.clear();
  for (const own of found.own) phone.own.put(own);
  takeAll(phone, found);
  phone.ownTurn.value += 1;
  return found.rowsAt === null || found.rows.length > 0;
};

/** All rows, in place of whatever was held. */
export const readRows = async (phone: Phone): Promise<void> => {
  const found = await phone.connection.read(["pages", "overlay", "meta"], (transaction) =>
    rowsWith(allRowsIn, transaction),
  );
  takeAll(phone, found);
};

interface Found {
  rows: Row[];
  rowsAt: RowsAt | null;
  loading: Loading | null;
}

const takeAll = (phone: Phone, { rows, rowsAt, loading }: Found): void => {
  phone.loading = loading;
  phone.rowsReplaced(rows, rowsAt);
};

/** Rows of the finished load; of an unfinished first one, those that have come so far. */
const rowsWith = async (rowsIn: typeof allRowsIn, transaction: ReadTransaction): Promise<Found> => {
  const [rowsAt = null, loading = null] = await Promise.all([
    readMeta(transaction, "rows"),
    readMeta(transaction, "loading"),
  ]);
  const { generation } = rowsAt ?? loading ?? NO_ROWS_YET;
  return { rows: await rowsIn(transaction, generation), rowsAt, loading };
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
  if (keys === null || held === null || held.revision + 1 !== revision) return readRows(phone);
  const { rows, at } = await phone.connection.read(["overlay", "meta"], async (transaction) => {
    const overlay = transaction.objectStore("overlay");
    const found = await Promise.all(keys.map((key) => overlay.get(key)));
    return { rows: found, at: await readMeta(transaction, "rows") };
  });
  // A further change has come in between: what was read belongs to that one.
  if (at?.revision !== revision || rows.includes(undefined)) return readRows(phone);
  phone.rowsChanged(rows as Row[], at);
};
