// How the brewery's rows lie on the phone: up to a thousand to a record, apart by who asks for them
// first, so that nobody waits for thousands of containers who names a few. Rows that change
// afterwards lie one by one in the overlay, until they are worked into the pages.

import { isFullHere, type Standing } from "../domain/standing.ts";
import { type Row, type RowKey, rowKey, type SubjectType } from "./kept.ts";
import type { ReadTransaction, WriteTransaction } from "./schema.ts";

/**
 * In the order in which they are read: what the bench names before a container is typed, few however
 * long the brewery has brewed; what stands full at the brewery; what stands empty there; the rest.
 */
export const PARTS = ["bench", "cellar", "home", "rest"] as const;
export type Part = (typeof PARTS)[number];

const PART_OF: { readonly [type in SubjectType]?: Part } = {
  ...{ brewery: "bench", beer: "bench", gyle: "bench", setting: "bench" },
  ...{ lot: "bench", solution: "bench", trial: "bench" },
  ...{ place: "cellar", customer: "cellar" },
};

const partOf = ({ type, doc }: Row): Part => {
  if (type !== "container") return PART_OF[type] ?? "rest";
  const standing = doc as Standing;
  if (isFullHere(standing)) return "cellar";
  return standing.trip === null ? "home" : "rest";
};

/** Sorts after every part, and after every number. */
const LAST: never[] = [];

export const pagesOf = (generation: number, ...part: Part[]): IDBKeyRange =>
  IDBKeyRange.bound([generation, ...part], [generation, ...part, LAST]);

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
  await Promise.all(
    PARTS.map(async (part) => {
      const those = rows.filter((row) => partOf(row) === part);
      if (those.length > 0) await pages.put(those, [generation, part, page]);
    }),
  );
};

/** Whether they lie apart: a release before this one kept them otherwise. */
export const lieApart = async (
  transaction: ReadTransaction | WriteTransaction,
  generation: number,
): Promise<boolean> => {
  const keys = await transaction.objectStore("pages").getAllKeys(pagesOf(generation));
  return keys.every(([, part]) => (PARTS as readonly unknown[]).includes(part));
};

const FIRST_CONTAINER = rowKey("container", "");
const LAST_CONTAINER = rowKey("container", "\uffff");

export const isContainerKey = (key: RowKey): boolean => key.startsWith(FIRST_CONTAINER);

/** What the bench names, and all else that has changed but containers. */
export const benchRowsIn = async (
  transaction: ReadTransaction,
  generation: number,
): Promise<Row[]> => {
  const overlay = transaction.objectStore("overlay");
  const [kept, ...changed] = await Promise.all([
    transaction.objectStore("pages").getAll(pagesOf(generation, "bench")),
    overlay.getAll(IDBKeyRange.upperBound(FIRST_CONTAINER)),
    overlay.getAll(IDBKeyRange.lowerBound(LAST_CONTAINER)),
  ]);
  return [...kept, ...changed].flat();
};

/** What stands full at the brewery, and each container that has changed: it may be full since. */
export const cellarRowsIn = async (
  transaction: ReadTransaction,
  generation: number,
): Promise<Row[]> => {
  const [kept, changed] = await Promise.all([
    transaction.objectStore("pages").getAll(pagesOf(generation, "cellar")),
    transaction.objectStore("overlay").getAll(IDBKeyRange.bound(FIRST_CONTAINER, LAST_CONTAINER)),
  ]);
  return [...kept.flat(), ...changed];
};

/** One page after the other: what is pressed meanwhile is answered between two. */
export const pagedRowsIn = async (
  transaction: ReadTransaction,
  range: IDBKeyRange,
): Promise<Row[]> => {
  const pages = transaction.objectStore("pages");
  const rows: Row[] = [];
  for (const key of await pages.getAllKeys(range)) rows.push(...((await pages.get(key)) ?? []));
  return rows;
};
