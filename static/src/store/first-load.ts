// The first load, and any fresh start after it: pages kept as they come, so that it goes on where
// it was cut off. The rows held before stay in use until the last page is in; then all change over
// in one transaction.

import type { Loading, Row, RowsAt } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { WriteTransaction } from "./schema.ts";

export const NO_ROWS_YET = { generation: 0, revision: 0 };

/** What the brewery says at the head of its snapshot. */
export interface SnapshotHead {
  epoch: string;
  position: number;
  rules: number;
}

export interface Page {
  rows: Row[];
  /** Where the next page starts; null after the last. */
  next: string | null;
}

export const pagesOf = (generation: number): IDBKeyRange =>
  IDBKeyRange.bound([generation, 0], [generation, Number.POSITIVE_INFINITY]);

export const beginLoad = async (phone: Phone, head: SnapshotHead): Promise<void> => {
  const loading = await phone.connection.write(["pages", "meta"], async (transaction) => {
    const { generation } = (await readMeta(transaction, "rows")) ?? NO_ROWS_YET;
    const { epoch, position, rules } = head;
    const begun: Loading = {
      ...{ epoch, position, rules },
      ...{ generation: generation + 1, after: null, pages: 0 },
    };
    const leftOver = pagesOf(begun.generation);
    await Promise.all([
      transaction.objectStore("pages").delete(leftOver),
      writeMeta(transaction, "loading", begun),
    ]);
    return begun;
  });
  phone.loading = loading;
  // Pages of an earlier start were shown while there was nothing better.
  if (phone.rowsAt === null) phone.rowsReplaced([], null);
};

/** Keep a page; with the last one, change over. Answers how many entries are offered again. */
export const takePage = async (phone: Phone, page: Page): Promise<number> => {
  const expected = phone.loading;
  const taken = await phone.connection.write(
    ["pages", "overlay", "outbox", "sent", "meta"],
    async (transaction) => {
      const loading = await readMeta(transaction, "loading");
      // Another tab has gone on with it: this page is of no more use.
      if (loading === undefined || loading.after !== expected?.after) return null;
      const pages = transaction.objectStore("pages");
      await pages.put(page.rows, [loading.generation, loading.pages]);
      const further = { ...loading, after: page.next, pages: loading.pages + 1 };
      if (page.next !== null) {
        await writeMeta(transaction, "loading", further);
        return { further, over: null };
      }
      return { further: null, over: await changeOver(transaction, loading) };
    },
  );
  if (taken === null) return 0;
  phone.loading = taken.further;
  if (taken.over === null) {
    if (phone.rowsAt === null) phone.rowsAdded(page.rows);
    return 0;
  }
  const { rows, at, offered } = taken.over;
  for (const [, own] of offered) if (own) phone.own.put(own);
  phone.rowsReplaced(rows, at);
  phone.ownTurn.value += 1;
  phone.tabs.tell({ about: "rows", keys: null, revision: at.revision });
  if (offered.length > 0) phone.tabs.tell({ about: "own", keys: offered.map(([n]) => n) });
  return offered.length;
};

const changeOver = async (transaction: WriteTransaction, loading: Loading) => {
  const { revision } = (await readMeta(transaction, "rows")) ?? NO_ROWS_YET;
  const { epoch, position, rules, generation } = loading;
  const at: RowsAt = {
    ...{ epoch, cursor: position, whole: position, rules },
    ...{ generation, revision: revision + 1 },
  };
  const pages = transaction.objectStore("pages");
  const older = IDBKeyRange.upperBound([generation, 0], true);
  const [found, offered] = await Promise.all([
    pages.getAll(pagesOf(generation)),
    offerAgain(transaction, epoch),
    pages.delete(older),
    transaction.objectStore("overlay").clear(),
    writeMeta(transaction, "rows", at),
    transaction.objectStore("meta").delete("loading"),
  ]);
  return { rows: found.flat(), at, offered };
};

/** Entries that another life of the ledger took: this one may have lost them with a restore. */
const offerAgain = async (transaction: WriteTransaction, epoch: string): Promise<OwnChange[]> => {
  const sent = transaction.objectStore("sent");
  const outbox = transaction.objectStore("outbox");
  const [keys, values] = await Promise.all([sent.getAllKeys(), sent.getAll()]);
  const changes: OwnChange[] = [];
  for (const [at, n] of keys.entries()) {
    const one = values[at];
    if (one === undefined || one.epoch === epoch) continue;
    const { entry, before, savedAt, offsetMs } = one;
    const kept = { entry, before, savedAt, offsetMs, again: true as const };
    changes.push([n, { where: "phone", n, kept }]);
    await Promise.all([outbox.put(kept, n), sent.delete(n)]);
  }
  return changes;
};
