// Rows that the brewery says have changed: rows and cursor go in together or not at all, so that
// the cursor is never ahead of the rows.

import { type Row, type RowsAt, rowKey } from "./kept.ts";
import { readMeta, writeMeta } from "./meta.ts";
import { lieApart, pagesBefore, pagesOf, putPage } from "./pages.ts";
import type { Phone } from "./phone.ts";

/** One answer to a pull: what changed after `since`, up to `next`. */
export interface Changes {
  since: number;
  next: number;
  rows: Row[];
  /** Whether this was the last page: then everything up to `next` is here. */
  last: boolean;
}

export const takeRows = async (phone: Phone, changes: Changes): Promise<void> => {
  const held = phone.rowsAt;
  if (held === null || held.cursor !== changes.since) return;
  const news = changes.rows.filter((row) => phone.rows.isNews(row));
  const whole = changes.last ? changes.next : held.whole;
  if (news.length === 0 && changes.next === held.cursor && whole === held.whole) return;
  const at: RowsAt = { ...held, cursor: changes.next, whole, revision: held.revision + 1 };
  const taken = await phone.connection.write(["overlay", "meta"], async (transaction) => {
    const stored = await readMeta(transaction, "rows");
    // Another tab was quicker: its news is on the way to this one.
    if (stored?.revision !== held.revision) return false;
    const overlay = transaction.objectStore("overlay");
    await Promise.all([
      ...news.map((row) => overlay.put(row, rowKey(row.type, row.id))),
      writeMeta(transaction, "rows", at),
    ]);
    return true;
  });
  if (!taken) return;
  phone.rowsChanged(news, at);
  const keys = news.map((row) => rowKey(row.type, row.id));
  phone.tabs.tell({ about: "rows", keys, revision: at.revision });
};

/** Rows in the overlay above which it is worked into the pages, to keep starting up quick. */
const OVERLAY_ENOUGH = 500;
const PAGE_ROWS = 1000;

/** Write the pages anew from memory once the overlay has grown large, or a release before kept them. */
export const tidyPages = async (phone: Phone): Promise<void> => {
  const held = phone.rowsAt;
  if (held === null) return;
  await phone.connection.write(["pages", "overlay", "meta"], async (transaction) => {
    const overlay = transaction.objectStore("overlay");
    const pages = transaction.objectStore("pages");
    const { generation } = held;
    const [stored, changed, apart] = await Promise.all([
      readMeta(transaction, "rows"),
      overlay.count(),
      lieApart(transaction, generation),
    ]);
    if (stored?.revision !== held.revision || (apart && changed < OVERLAY_ENOUGH)) return;
    const rows = [...phone.rows.all.values()];
    const writing: Promise<unknown>[] = [
      pages.delete(pagesBefore(generation)),
      pages.delete(pagesOf(generation)),
    ];
    for (let page = 0; page * PAGE_ROWS < rows.length; page += 1) {
      const those = rows.slice(page * PAGE_ROWS, (page + 1) * PAGE_ROWS);
      writing.push(putPage(transaction, generation, page, those));
    }
    await Promise.all([...writing, overlay.clear()]);
  });
};
