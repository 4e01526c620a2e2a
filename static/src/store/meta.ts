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

type Reading = { get(name: string): Promise<unknown> };
type Writing = { put(value: unknown, name: string): Promise<unknown> };
type MetaIn<S> = { objectStore(name: "meta"): S };

export const readMeta = async <N extends keyof Meta>(
  transaction: MetaIn<Reading>,
  name: N,
): Promise<Meta[N] | undefined> =>
  (await transaction.objectStore("meta").get(name)) as Meta[N] | undefined;

export const writeMeta = <N extends keyof Meta>(
  transaction: MetaIn<Writing>,
  name: N,
  value: Meta[N],
): Promise<unknown> => transaction.objectStore("meta").put(value, name);
