// The brewery's rows as this phone holds them, all in memory, with their running checksum.

import { crc32 } from "./crc32.ts";
import { type Row, type RowKey, rowKey } from "./kept.ts";

const MODULUS = 2 ** 48;
const share = (row: Row): number => crc32(`${row.type}:${row.id}:${row.position}`);

/** The rows of the brewery that were held otherwise, although they had not changed since `upTo`. */
export const differences = (held: HeldRows, theirs: readonly Row[], upTo: number): RowKey[] => {
  const gone = new Set(held.all.keys());
  const differing = theirs.flatMap((row) => {
    const key = rowKey(row.type, row.id);
    gone.delete(key);
    return row.position <= upTo && held.get(key)?.position !== row.position ? [key] : [];
  });
  return [...differing, ...gone];
};

export class HeldRows {
  readonly all = new Map<RowKey, Row>();
  #sum = 0;

  /** Comparable with the brewery's: whatever order the rows came in, it is the same. */
  get checksum(): number {
    return this.#sum;
  }

  get(key: RowKey): Row | undefined {
    return this.all.get(key);
  }

  /** Whether the row is news: a row never goes back to an older position. */
  isNews(row: Row): boolean {
    const held = this.all.get(rowKey(row.type, row.id));
    return held === undefined || row.position >= held.position;
  }

  put(row: Row): void {
    const key = rowKey(row.type, row.id);
    const held = this.all.get(key);
    const change = share(row) - (held === undefined ? 0 : share(held));
    this.#sum = (this.#sum + change + MODULUS) % MODULUS;
    this.all.set(key, row);
  }

  clear(): void {
    this.all.clear();
    this.#sum = 0;
  }
}
