// This phone's own entries in memory: on the phone, at the brewery, or waiting for a person.
// Those that the rows may not hold yet are found by the rows that they touch, without a search.

import { type MadeEntry, rowType } from "../domain/entries.ts";
import { isNumber } from "../domain/numbers.ts";
import { movedTo, targetOf } from "./about.ts";
import { type Attention, type Kept, type RowKey, rowKey, type Sent } from "./kept.ts";

/** An own entry under the key that the outbox gave it. */
export type Own =
  | { where: "phone"; n: number; kept: Kept }
  | { where: "brewery"; n: number; kept: Sent }
  | { where: "attention"; n: number; kept: Attention };

export class OwnEntries {
  readonly #byKey = new Map<number, Own>();
  readonly #keyOf = new Map<string, number>();
  readonly #pending = new Map<RowKey, Set<number>>();
  readonly #rowsOf = new Map<number, Set<RowKey>>();
  /** By the id of an entry, the corrections that are about it. */
  readonly #correcting = new Map<string, Set<number>>();
  readonly #unsent = new Set<number>();
  readonly #attention = new Set<number>();

  put(own: Own): void {
    this.remove(own.n);
    this.#byKey.set(own.n, own);
    this.#keyOf.set(own.kept.entry.id, own.n);
    const target = targetOf(own.kept.entry);
    if (target !== null) addTo(this.#correcting, target, own.n);
    if (own.where === "phone") this.#unsent.add(own.n);
    if (own.where === "attention") this.#attention.add(own.n);
    else this.#index(own);
  }

  remove(n: number): void {
    const own = this.#byKey.get(n);
    if (own === undefined) return;
    this.settle(n);
    const target = targetOf(own.kept.entry);
    if (target !== null) takeFrom(this.#correcting, target, n);
    this.#byKey.delete(n);
    this.#unsent.delete(n);
    this.#attention.delete(n);
    if (this.#keyOf.get(own.kept.entry.id) === n) this.#keyOf.delete(own.kept.entry.id);
  }

  clear(): void {
    for (const n of [...this.#byKey.keys()]) this.remove(n);
  }

  /** The rows hold this entry: they need it no more. */
  settle(n: number): void {
    for (const key of this.#rowsOf.get(n) ?? []) takeFrom(this.#pending, key, n);
    this.#rowsOf.delete(n);
  }

  byId(id: string): Own | undefined {
    const n = this.#keyOf.get(id);
    return n === undefined ? undefined : this.#byKey.get(n);
  }

  byKey(n: number): Own | undefined {
    return this.#byKey.get(n);
  }

  /** Entries that the row may not hold yet. */
  pendingOn(key: RowKey): Own[] {
    const there = this.#pending.get(key);
    return there === undefined ? [] : this.#found(there);
  }

  /** The corrections that are about an entry, those not taken by the brewery left out. */
  correctionsOf(id: string): Own[] {
    const there = this.#correcting.get(id);
    return there === undefined ? [] : this.#found(there).filter(counts);
  }

  /** Every entry that some row may not hold yet. */
  pending(): Own[] {
    return this.#found(this.#rowsOf.keys());
  }

  /** Every row that an entry not yet in the rows touches. */
  pendingRows(): Iterable<RowKey> {
    return this.#pending.keys();
  }

  get all(): Iterable<Own> {
    return this.#byKey.values();
  }
  get unsentCount(): number {
    return this.#unsent.size;
  }
  get attentionCount(): number {
    return this.#attention.size;
  }

  /** What the brewery has not answered yet, in the order in which it was made. */
  unsent(): Own[] {
    return this.#found(this.#unsent);
  }

  /** What the brewery keeps for a person, or for a later release that can read it. */
  held(): Own[] {
    const waiting = this.#found(this.#attention);
    return waiting.filter((own) => own.where === "attention" && own.kept.verdict === "held");
  }

  firstUnsent(): Own | undefined {
    let first = Number.POSITIVE_INFINITY;
    for (const n of this.#unsent) first = Math.min(first, n);
    return this.#byKey.get(first);
  }

  lastUnsent(): Own | undefined {
    let last = 0;
    for (const n of this.#unsent) last = Math.max(last, n);
    return this.#byKey.get(last);
  }

  /** The rows that an entry changes, if corrected also elsewhere; a correction those of its target. */
  touches(entry: MadeEntry, beneath = 0): Set<RowKey> {
    const { kind, subject, facts } = entry;
    const type = rowType(kind);
    if (type !== "container") return new Set([rowKey(type, subject)]);
    const keys = new Set<RowKey>();
    if (isNumber(subject)) keys.add(rowKey("container", subject));
    if (kind === "filled") keys.add(rowKey("gyle", String(facts["gyle"])));
    for (const key of movedTo(entry)) keys.add(key);
    for (const { kept } of this.correctionsOf(entry.id)) {
      for (const key of movedTo(kept.entry)) keys.add(key);
    }
    const target = this.byId(targetOf(entry) ?? "")?.kept.entry;
    // Voids of voids end somewhere; a ring, which no screen can make, is cut.
    if (target !== undefined && beneath < 10) {
      for (const key of this.touches(target, beneath + 1)) keys.add(key);
    }
    return keys;
  }

  #index(own: Own): void {
    const keys = this.touches(own.kept.entry);
    this.#rowsOf.set(own.n, keys);
    for (const key of keys) addTo(this.#pending, key, own.n);
    // A correction may move its target to a further row, also when the target comes later there.
    const target = this.byId(targetOf(own.kept.entry) ?? "");
    if (target !== undefined && target.n < own.n && this.#rowsOf.has(target.n)) this.#index(target);
  }

  #found(keys: Iterable<number>): Own[] {
    return [...keys].sort((a, b) => a - b).flatMap((n) => this.#byKey.get(n) ?? []);
  }
}

const counts = ({ where }: Own): boolean => where !== "attention";

const addTo = <K>(index: Map<K, Set<number>>, key: K, n: number): void => {
  index.set(key, (index.get(key) ?? new Set()).add(n));
};

const takeFrom = <K>(index: Map<K, Set<number>>, key: K, n: number): void => {
  const there = index.get(key);
  if (there?.delete(n) && there.size === 0) index.delete(key);
};
