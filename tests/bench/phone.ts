/** What the bench asks of the page: saves by the book, and bare puts of the same record. */
import { book, keepSafe, phone } from "../../static/src/store/book.ts";
import { sync } from "../../static/src/sync/engine.ts";

const GYLE = "00000000-0000-7000-8000-000000000001";

const openBare = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const asked = indexedDB.open("bare", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("outbox", { autoIncrement: true });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });

const put = (bare: IDBDatabase, record: unknown): Promise<void> =>
  new Promise((resolve, reject) => {
    const transaction = bare.transaction("outbox", "readwrite", { durability: "strict" });
    transaction.objectStore("outbox").add(record);
    transaction.oncomplete = () => resolve();
    transaction.onerror = () => reject(transaction.error);
  });

const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

Object.assign(globalThis, {
  /** Milliseconds from an empty phone to all rows in memory. */
  firstLoad: (rows: number): Promise<number> =>
    timed(async () => {
      await book.open();
      await keepSafe();
      sync.start();
      await sync.now();
      if (book.containers.value.size < rows) throw new Error(`${book.containers.value.size} rows`);
    }),
  /** Milliseconds of each save of a fill, ours and bare in turn. */
  saves: async (numbers: string[]): Promise<[number, number][]> => {
    const bare = await openBare();
    const pairs: [number, number][] = [];
    for (const number of numbers) {
      const facts = { gyle: GYLE, volume_ml: 40_000, best_before: "2026-12-30" };
      const ours = await timed(() => book.record("filled", number, facts));
      const own = phone.own.lastUnsent();
      if (own === undefined) throw new Error("nothing was saved");
      pairs.push([ours, await timed(() => put(bare, own.kept))]);
    }
    return pairs;
  },
});
