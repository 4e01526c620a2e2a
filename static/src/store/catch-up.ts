// Following what other tabs of the same phone do: from their news, and by looking when a tab may
// have slept through it.

import { readMeta } from "./meta.ts";
import type { Phone } from "./phone.ts";
import { readRows, rereadOwn, rereadRows } from "./reading.ts";

export const hearNews = (phone: Phone, rereadSetting: (name: string) => Promise<void>): void => {
  phone.tabs.onNews((news) => {
    const work =
      news.about === "own"
        ? rereadOwn(phone, news.keys)
        : news.about === "rows"
          ? rereadRows(phone, news.keys, news.revision)
          : rereadSetting(news.name);
    // The connection has told the screens; the next look at the tab catches up.
    work.catch(() => undefined);
  });
};

/** Compare memory with the storage, and read what differs. */
export const catchUp = async (phone: Phone): Promise<void> => {
  const stored = await phone.connection.read(
    ["outbox", "attention", "meta"],
    async (transaction) => {
      const [rowsAt, loading, clock, unsent, attention] = await Promise.all([
        readMeta(transaction, "rows"),
        readMeta(transaction, "loading"),
        readMeta(transaction, "clock"),
        transaction.objectStore("outbox").getAllKeys(),
        transaction.objectStore("attention").getAllKeys(),
      ]);
      return { rowsAt, loading, clock, unsent, attention };
    },
  );
  if (stored.clock !== undefined) phone.clock.follow(stored.clock);
  const sameRows = stored.rowsAt?.revision === phone.rowsAt?.revision;
  const sameLoad = stored.loading?.after === phone.loading?.after;
  if (!sameRows || !sameLoad) await readRows(phone);
  const moved = new Set<number>();
  const compare = (keys: number[], where: "phone" | "attention") => {
    const there = new Set(keys);
    for (const n of keys) if (phone.own.byKey(n)?.where !== where) moved.add(n);
    for (const own of phone.own.all) if (own.where === where && !there.has(own.n)) moved.add(own.n);
  };
  compare(stored.unsent, "phone");
  compare(stored.attention, "attention");
  if (moved.size > 0) await rereadOwn(phone, [...moved]);
};
