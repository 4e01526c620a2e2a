// A browser may clear a page's storage: under an open tab, or while the app is closed.
// An open tab still has everything in memory and puts it back; otherwise a mark kept elsewhere at
// least tells how much was lost.

import { writeMeta } from "./meta.ts";
import type { Phone } from "./phone.ts";
import type { Database, StoreName } from "./schema.ts";

const OWN_STORES = { phone: "outbox", brewery: "sent", attention: "attention" } as const;

/** The storage was opened again: if it is empty now, write back what this tab knows. */
export const putBack = async (phone: Phone, database: Database): Promise<void> => {
  if (phone.device === "" || (await database.get("meta", "device")) !== undefined) return;
  const stores: StoreName[] = ["outbox", "sent", "attention", "meta"];
  const transaction = database.transaction(stores, "readwrite", { durability: "strict" });
  const writing: Promise<unknown>[] = [
    writeMeta(transaction, "device", { id: phone.device, madeAt: phone.clock.now() }),
    writeMeta(transaction, "running", phone.running),
  ];
  for (const own of phone.own.all) {
    writing.push(transaction.objectStore(OWN_STORES[own.where]).put(own.kept as never, own.n));
  }
  await Promise.all([...writing, transaction.done]);
  // The rows are fetched anew; until then those in memory are shown.
  phone.rowsAt = null;
  phone.loading = null;
};

interface Mark {
  device: string;
  unsent: number;
  /** The phone's running number; a release before this one did not keep it. */
  seq?: number;
}

/** The mark that an earlier start has left, if it can be read. */
const markFrom = (text: string | null): Mark | null => {
  try {
    return JSON.parse(text ?? "null") as Mark | null;
  } catch {
    return null; // half written as the battery went: it tells nothing, and a new one is left soon
  }
};

/**
 * A storage that was put back to an older state would number new entries as it has numbered others
 * before: it goes on from where the mark says that it was.
 */
export const numberOn = (phone: Phone, text: string | null): void => {
  const mark = markFrom(text);
  if (mark?.device !== phone.device) return;
  phone.numberedTo = Math.max(phone.numberedTo, mark.seq ?? 0);
};

/** What the mark of an earlier start says is lost, in words; null if nothing is. */
export const lossSince = (text: string | null, device: string): string | null => {
  const mark = markFrom(text);
  if (mark === null || mark.device === device || mark.unsent === 0) return null;
  const { unsent } = mark;
  const entries = unsent === 1 ? "One entry" : `${unsent} entries`;
  return `The browser has cleared this app's storage. ${entries} had not reached the brewery yet.`;
};

export const markOf = (device: string, unsent: number, seq: number): string =>
  JSON.stringify({ device, unsent, seq } satisfies Mark);
