// The one connection to the phone's storage, and the two ways of using it.
// A browser may close it whenever the app is in the background, so it is opened again, once.

import type { Watching } from "./open.ts";
import type { Database, ReadTransaction, StoreName, WriteTransaction } from "./schema.ts";
import { Trouble, troubleFrom } from "./trouble.ts";

export type Opener = (watching: Watching) => Promise<Database>;
type Durability = "strict" | "relaxed";

export class Connection {
  /** Called with what a person should know when the storage goes away, or null when it is back. */
  onTrouble: (trouble: Error | null) => void = () => undefined;
  /** Called when the storage was closed under the app and has been opened again. */
  onReopened: (database: Database) => Promise<void> = async () => undefined;
  #opener: Opener;
  #database: Promise<Database> | null = null;
  #newer = false;
  #openedBefore = false;

  constructor(opener: Opener) {
    this.#opener = opener;
  }

  /** Everything in `work` or nothing. Resolves after the browser says that it is on the disk. */
  async write<T>(
    stores: StoreName[],
    work: (transaction: WriteTransaction) => Promise<T>,
    durability: Durability = "strict",
  ): Promise<T> {
    return this.#use(async (database) => {
      const transaction = database.transaction(stores, "readwrite", { durability });
      return finish(transaction, work);
    });
  }

  async read<T>(
    stores: StoreName[],
    work: (transaction: ReadTransaction) => Promise<T>,
  ): Promise<T> {
    return this.#use((database) => finish(database.transaction(stores, "readonly"), work));
  }

  async #use<T>(work: (database: Database) => Promise<T>): Promise<T> {
    try {
      let result: T;
      try {
        result = await work(await this.#open());
      } catch (error) {
        if (!isClosed(error)) throw error;
        this.#database = null;
        result = await work(await this.#open());
      }
      this.onTrouble(null);
      return result;
    } catch (error) {
      const trouble = troubleFrom(error);
      this.onTrouble(trouble);
      throw trouble;
    }
  }

  #open(): Promise<Database> {
    if (this.#newer) return Promise.reject(new Trouble("newer"));
    if (this.#database === null) {
      const opening = this.#openDatabase();
      this.#database = opening;
      // A failed opening is not kept, so that the next save tries afresh. Who waits is told.
      opening.catch(() => {
        if (this.#database === opening) this.#database = null;
      });
    }
    return this.#database;
  }

  async #openDatabase(): Promise<Database> {
    const database = await this.#opener({
      onNewer: () => {
        this.#newer = true;
        this.onTrouble(new Trouble("newer"));
      },
      onLost: () => {
        this.#database = null;
      },
    });
    if (this.#openedBefore) await this.onReopened(database);
    this.#openedBefore = true;
    return database;
  }
}

/** Errors after which the handle is of no more use; nothing of the transaction has been kept. */
const isClosed = (error: unknown): boolean =>
  error instanceof Error && ["InvalidStateError", "UnknownError"].includes(error.name);

/** Work, then wait for the end of the transaction; on any failure take all of it back. */
const finish = async <X extends ReadTransaction | WriteTransaction, T>(
  transaction: X,
  work: (transaction: X) => Promise<T>,
): Promise<T> => {
  const { done } = transaction;
  try {
    const result = await work(transaction);
    await done;
    return result;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It has ended already, by the failure itself.
    }
    await done.catch(() => undefined); // the same failure once more: it is thrown from here
    throw transaction.error ?? error;
  }
};
