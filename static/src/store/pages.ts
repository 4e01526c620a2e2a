// How the brewery's rows lie on the phone: up to a thousand to a record, each record of one type,
// so that the few that the first screen names are read before the thousands of containers. Rows
// that change afterwards lie one by one in the overlay, until they are worked into the pages.

import { type Row, rowKey, type SubjectType } from "./kept.ts";
import type { ReadTransaction, WriteTransaction } from "./schema.ts";

/** Sorts after every type of rows, and after every number. */
const LAST: never[] = [];

export const pagesOf = (generation: number): IDBKeyRange =>
  IDBKeyRange.bound([generation], [generation, LAST]);

export const pagesBefore = (generation: number): IDBKeyRange =>
  IDBKeyRange.upperBound([generation], true);

/** Keep rows as the page of this number. */
export const putPage = async (
  transaction: WriteTransaction,
  generation: number,
  page: number,
  rows: readonly Row[],
): Promise<void> => {
  const pages = transaction.objectStore("pages");
  const types = [...new Set(rows.map(({ type }) => type))];
  await Promise.all(
    types.map((type) => {
      const those = rows.filter((row) => row.type === type);
      return pages.put(those, [generation, type, page]);
    }),
  );
};

/** What the bench names before a container is typed: few, however long the brewery has brewed. */
const FIRST: readonly SubjectType[] = [
  "brewery",
  "beer",
  "gyle",
  "setting",
  "lot",
  "solution",
  "trial",
];

export const firstRowsIn = async (
  transaction: ReadTransaction,
  generation: number,
): Promise<Row[]> => {
  const pages = transaction.objectStore("pages");
  const overlay = transaction.objectStore("overlay");
  const found = await Promise.all(
    FIRST.map((type) =>
      Promise.all([
        pages.getAll(IDBKeyRange.bound([generation, type], [generation, type, LAST])),
        overlay.getAll(IDBKeyRange.bound(rowKey(type, ""), rowKey(type, "\uffff"))),
      ]),
    ),
  );
  return found.flatMap(([kept, changed]) => [...kept.flat(), ...changed]);
};

/** One page after the other: what is pressed meanwhile is answered between two. */
export const allRowsIn = async (
  transaction: ReadTransaction,
  generation: number,
): Promise<Row[]> => {
  const pages = transaction.objectStore("pages");
  const rows: Row[] = [];
  for (const key of await pages.getAllKeys(pagesOf(generation))) {
    rows.push(...((await pages.get(key)) ?? []));
  }
  rows.push(...(await transaction.objectStore("overlay").getAll()));
  return rows;
};
