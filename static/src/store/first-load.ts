// The first load, and any fresh start after it: pages kept as they come, so that it goes on where
// it was cut off. The rows held before stay in use until the last page is in; then all change over
// in one transaction.

import { differences } from "./held-rows.ts";
import { asMade, type Loading, type Row, type RowKey, type RowsAt, type Why } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import { pagesBefore, pagesOf, putPage } from "./pages.ts";
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

export const beginLoad = async (
  phone: Phone,
  head: SnapshotHead,
  why: Why | null = null,
): Promise<void> => {
  const loading = await phone.connection.write(["pages", "meta"], async (transaction) => {
    const { generation } = (await readMeta(transaction, "rows")) ?? NO_ROWS_YET;
    const { epoch, position, rules } = head;
    const begun: Loading = {
      ...{ epoch, position, rules },
      ...{ generation: generation + 1, after: null, pages: 0 },
      ...(why === null ? {} : { why }),
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

/** What a finished load has brought to light. */
export interface Loaded {
  why: Why | null;
  /** Own entries that are offered again. */
  offered: number;
  /** Rows that were held otherwise than the brewery has them. */
  differing: RowKey[];
}

/** Keep a page; with the last one, change over and answer what that has brought to light. */
export const takePage = async (phone: Phone, page: Page): Promise<Loaded | null> => {
  const expected = phone.loading;
  const taken = await phone.connection.write(
    ["pages", "overlay", "outbox", "sent", "meta"],
    async (transaction) => {
      const loading = await readMeta(transaction, "loading");
      // Another tab has gone on with it: this page is of no more use.
      if (loading === undefined || loading.after !== expected?.after) return null;
      await putPage(transaction, loading.generation, loading.pages, page.rows);
      const further = { ...loading, after: page.next, pages: loading.pages + 1 };
      if (page.next !== null) {
        await writeMeta(transaction, "loading", further);
        return { further, over: null };
      }
      return { further: null, over: await changeOver(transaction, loading) };
    },
  );
  if (taken === null) return null;
  phone.loading = taken.further;
  if (taken.over === null) {
    if (phone.rowsAt === null) phone.rowsAdded(page.rows);
    return null;
  }
  const { rows, at, offered, why } = taken.over;
  const upTo = phone.rowsAt?.cursor ?? 0;
  const differing = why === "differs" ? differences(phone.rows, rows, upTo) : [];
  for (const [, own] of offered) if (own) phone.own.put(own);
  phone.rowsReplaced(rows, at);
  phone.ownTurn.value += 1;
  phone.tabs.tell({ about: "rows", keys: null, revision: at.revision });
  if (offered.length > 0) phone.tabs.tell({ about: "own", keys: offered.map(([n]) => n) });
  return { why, offered: offered.length, differing };
};

const changeOver = async (transaction: WriteTransaction, loading: Loading) => {
  const { revision } = (await readMeta(transaction, "rows")) ?? NO_ROWS_YET;
  const { epoch, position, rules, generation, why = null } = loading;
  const at: RowsAt = {
    ...{ epoch, cursor: position, whole: position, rules },
    ...{ generation, revision: revision + 1 },
  };
  const pages = transaction.objectStore("pages");
  const [found, offered] = await Promise.all([
    pages.getAll(pagesOf(generation)),
    offerAgain(transaction, epoch, why),
    pages.delete(pagesBefore(generation)),
    transaction.objectStore("overlay").clear(),
    writeMeta(transaction, "rows", at),
    transaction.objectStore("meta").delete("loading"),
  ]);
  return { rows: found.flat(), at, offered, why };
};

/**
 * Entries that another life of the ledger took: this one may have lost them with a restore. Where a
 * copy was put back by hand the life has not changed its name, so that any difference is a reason.
 */
const offerAgain = async (
  transaction: WriteTransaction,
  epoch: string,
  why: Why | null,
): Promise<OwnChange[]> => {
  const sent = transaction.objectStore("sent");
  const outbox = transaction.objectStore("outbox");
  const [keys, values] = await Promise.all([sent.getAllKeys(), sent.getAll()]);
  const changes: OwnChange[] = [];
  for (const [at, n] of keys.entries()) {
    const one = values[at];
    const lost = one?.epoch !== epoch || why === "went back" || why === "differs";
    if (one === undefined || !lost) continue;
    const kept = { ...asMade(one), again: true as const };
    changes.push([n, { where: "phone", n, kept }]);
    await Promise.all([outbox.put(kept, n), sent.delete(n)]);
  }
  return changes;
};
