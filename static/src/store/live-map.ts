// A map behind a signal that never copies its entries: with 10,000 containers a copy for each save
// would cost more than the save. What is handed out is a new view of the same entries each time,
// so that a screen sees that something has changed.

import { type ReadonlySignal, signal } from "@preact/signals";

export class LiveMap<V> {
  readonly #entries = new Map<string, V>();
  readonly #signal = signal<ReadonlyMap<string, V>>(new View(this.#entries));
  readonly signal: ReadonlySignal<ReadonlyMap<string, V>> = this.#signal;

  get(id: string): V | undefined {
    return this.#entries.get(id);
  }

  /** Silent until `publish`, so that many changes are one for the screen. */
  set(id: string, value: V | undefined): void {
    if (value === undefined) this.#entries.delete(id);
    else this.#entries.set(id, value);
  }

  clear(): void {
    this.#entries.clear();
  }

  publish(): void {
    this.#signal.value = new View(this.#entries);
  }
}

/** Reads through to the entries as they are now. */
class View<V> implements ReadonlyMap<string, V> {
  readonly #entries: ReadonlyMap<string, V>;

  constructor(entries: ReadonlyMap<string, V>) {
    this.#entries = entries;
  }

  get size(): number {
    return this.#entries.size;
  }
  get(id: string): V | undefined {
    return this.#entries.get(id);
  }
  has(id: string): boolean {
    return this.#entries.has(id);
  }
  forEach(visit: (value: V, id: string, map: ReadonlyMap<string, V>) => void): void {
    for (const [id, value] of this.#entries) visit(value, id, this);
  }
  entries(): MapIterator<[string, V]> {
    return this.#entries.entries();
  }
  keys(): MapIterator<string> {
    return this.#entries.keys();
  }
  values(): MapIterator<V> {
    return this.#entries.values();
  }
  [Symbol.iterator](): MapIterator<[string, V]> {
    return this.#entries.entries();
  }
}
