// Opening the phone's storage. It always settles within seconds, with words for the person:
// a browser that is asked to open a damaged or blocked database may otherwise never answer.

import { openDB } from "idb";
import {
  type Cellar,
  DATABASE_NAME,
  DATABASE_VERSION,
  type Database,
  makeStores,
} from "./schema.ts";
import { Trouble, troubleFrom } from "./trouble.ts";

export const PATIENCE_MS = 5000;

export interface Watching {
  /** Another tab wants to change the stores; this connection has been closed for it. */
  onNewer(): void;
  /** The browser has closed the connection by itself. */
  onLost(): void;
}

export const openCellar = (watching: Watching, patienceMs: number): Promise<Database> =>
  new Promise((resolve, reject) => {
    let blocked = false;
    let givenUp = false;
    const patience = setTimeout(() => {
      givenUp = true;
      reject(new Trouble(blocked ? "blocked" : "no-answer"));
    }, patienceMs);
    openDB<Cellar>(DATABASE_NAME, DATABASE_VERSION, {
      upgrade: (database, oldVersion) => {
        if (oldVersion < 1) makeStores(database);
      },
      blocked: () => {
        blocked = true;
      },
      blocking: (_current, _wanted, event) => {
        (event.target as IDBDatabase).close();
        watching.onNewer();
      },
      terminated: () => watching.onLost(),
    }).then(
      (database) => {
        clearTimeout(patience);
        // Opened after all, but nobody waits for it any more: it must not block the next try.
        if (givenUp) database.close();
        else resolve(database);
      },
      (error: unknown) => {
        clearTimeout(patience);
        reject(troubleFrom(error));
      },
    );
  });
