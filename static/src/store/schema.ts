// The phone's stores. Changed by adding only: an older tab may still be open on the same data.

import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from "idb";
import type { Attention, Kept, Row, RowKey, Sent } from "./kept.ts";
import type { Part } from "./pages.ts";

export const DATABASE_NAME = "cellarapp";
export const DATABASE_VERSION = 1;

export interface Cellar extends DBSchema {
  /** Rows by the thousand; see pages.ts. Releases before had another word, or none, for the part. */
  pages: { key: [generation: number, part: Part, page: number]; value: Row[] };
  /** Rows that changed after their page was written. */
  overlay: { key: RowKey; value: Row };
  /** Own entries under the key that the outbox gave them, which they keep wherever they go. */
  outbox: { key: number; value: Kept };
  sent: { key: number; value: Sent };
  attention: { key: number; value: Attention };
  /** Single records under a name; see meta.ts. */
  meta: { key: string; value: unknown };
}

export type StoreName = StoreNames<Cellar>;
export type Database = IDBPDatabase<Cellar>;
export type WriteTransaction = IDBPTransaction<Cellar, StoreName[], "readwrite">;
export type ReadTransaction = IDBPTransaction<Cellar, StoreName[], "readonly">;

export const makeStores = (database: Database): void => {
  database.createObjectStore("pages");
  database.createObjectStore("overlay");
  database.createObjectStore("outbox", { autoIncrement: true });
  database.createObjectStore("sent");
  database.createObjectStore("attention");
  database.createObjectStore("meta");
};
