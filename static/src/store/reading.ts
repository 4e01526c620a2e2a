// Reading the phone's storage into memory: all of it at the start, what the first screens show
// before the rest; afterwards what another tab has changed.

import { NO_ROWS_YET } from "./first-load.ts";
import type { Row, RowKey } from "./kept.ts";
import { type AllMeta, allMeta, readMeta, writeMeta } from "./meta.ts";
import type { Own } from "./own-entries.ts";
import {
  benchRowsIn,
  cellarRowsIn,
  isContainerKey,
  lieApart,
  type Part,
  pagedRowsIn,
  pagesOf,
} from "./pages.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { ReadTransaction } from "./schema.ts";

const EVERY_STORE = ["pages", "overlay", "outbox", "sent", "attention", "meta"] as const;

/**
 * Everything that the phone holds, in one transaction, so that it is all of one moment. `reached`
 * hears of each part as soon as it and those before it are known.
 */
export const readAll = async (phone: Phone, reached: (part: Part) => void): Promise<void> => {
  await phone.connection.read([...EVERY_STORE], async (transaction) => {
    const [meta, own] = await Promise.all([allMeta(transaction), ownIn(transaction)]);
    takeMeta(phone, meta);
    takeOwn(phone, own);
    const { generation } = meta.rows ?? meta.loading ?? NO_ROWS_YET;
    const [first, apart] = await Promise.all([
      benchRowsIn(transaction, generation),
      lieApart(transaction, generation),
    ]);
    phone.rowsReplaced(first, meta.rows ?? null);
    if (apart) reached("bench");
    phone.rowsRead(await cellarRowsIn(transaction, generation));
    if (apart && knowsWhatOwnEntriesChange(phone)) reached("cellar");
    phone.rowsRead(await pagedRowsIn(transaction, pagesOf(generation, "home")));
    if (apart && knowsWhatOwnEntriesChange(phone)) reached("cellar");
    const others = apart ? pagesOf(generation, "rest") : pagesOf(generation);
    phone.rowsRead(await pagedRowsIn(transaction, others));
  });
  if (phone.device === "") phone.device = await makeIdentity(phone);
  reached("rest");
};

const takeMeta = (phone: Phone, meta: AllMeta): void => {
  phone.settings.take(meta);
  if (meta.device !== undefined) phone.device = meta.device.id;
  if (meta.running !== undefined) phone.running = meta.running;
  if (meta.clock !== undefined) phone.clock.follow(meta.clock);
  phone.syncedAt = meta.syncedAt ?? null;
  phone.loading = meta.loading ?? null;
};

const takeOwn = (phone: Phone, all: readonly Own[]): void => {
  phone.own.clear();
  for (const own of all) phone.own.put(own);
  phone.ownTurn.value += 1;
};

/** What was filled on this phone since stood empty before, and may not be read yet. */
const knowsWhatOwnEntriesChange = ({ own, rows }: Phone): boolean =>
  [...own.pendingRows()].every((key) => !isContainerKey(key) || rows.get(key) !== undefined);

/** Who this device is; made once, by whichever tab comes first. */
const makeIdentity = (phone: Phone): Promise<string> =>
  phone.connection.write(["meta"], async (transaction) => {
    const known = await readMeta(transaction, "device");
    if (known !== undefined) return known.id;
    const made = { id: phone.newId(), madeAt: phone.clock.now() };
    await writeMeta(transaction, "device", made);
    return made.id;
  });

/** All rows, in place of whatever was held; of an unfinished first load, those that have come so far. */
export const readRows = async (phone: Phone): Promise<void> => {
  const found = await phone.connection.read(["pages", "overlay", "meta"], async (transaction) => {
    const [at = null, loading = null] = await Promise.all([
      readMeta(transaction, "rows"),
      readMeta(transaction, "loading"),
    ]);
    const { generation } = at ?? loading ?? NO_ROWS_YET;
    const rows = await pagedRowsIn(transaction, pagesOf(generation));
    rows.push(...(await transaction.objectStore("overlay").getAll()));
    return { rows, at, loading };
  });
  phone.loading = found.loading;
  phone.rowsReplaced(found.rows, found.at);
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
