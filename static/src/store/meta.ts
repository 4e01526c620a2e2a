// The single records of the phone, each under its name.

import type { ClockOffset, Loading, RowsAt, Running } from "./kept.ts";

export interface Meta {
  device: { id: string; madeAt: string };
  running: Running;
  rows: RowsAt;
  loading: Loading;
  clock: ClockOffset;
  /** When the phone last knew everything that the brewery knew. */
  syncedAt: string;
}

/** Also what is kept under other names, such as settings. */
export type AllMeta = Partial<Meta> & { readonly [name: string]: unknown };

type Reading = { get(name: string): Promise<unknown> };
type Writing = { put(value: unknown, name: string): Promise<unknown> };
type MetaIn<S> = { objectStore(name: "meta"): S };

export const readMeta = async <N extends keyof Meta>(
  transaction: MetaIn<Reading>,
  name: N,
): Promise<Meta[N] | undefined> =>
  (await transaction.objectStore("meta").get(name)) as Meta[N] | undefined;

/** Every single record at once. */
export const allMeta = async (
  transaction: MetaIn<{ getAllKeys(): Promise<string[]>; getAll(): Promise<unknown[]> }>,
): Promise<AllMeta> => {
  const meta = transaction.objectStore("meta");
  const [names, values] = await Promise.all([meta.getAllKeys(), meta.getAll()]);
  return Object.fromEntries(names.map((name, at) => [name, values[at]]));
};

export const writeMeta = <N extends keyof Meta>(
  transaction: MetaIn<Writing>,
  name: N,
  value: Meta[N],
): Promise<unknown> => transaction.objectStore("meta").put(value, name);
