// Settings of this phone: signals that are kept. Losing the last one to a flat battery is no harm,
// so they are stored without waiting for the disk.

import { effect, type Signal, signal, untracked } from "@preact/signals";
import type { AllMeta } from "./meta.ts";
import type { Phone } from "./phone.ts";

const nameIn = (name: string): string => `setting:${name}`;

export class Settings {
  readonly #signals = new Map<string, Signal<unknown>>();
  readonly #stored = new Map<string, unknown>();
  readonly #phone: Phone;
  #open = false;

  constructor(phone: Phone) {
    this.#phone = phone;
  }

  /** May be asked for before the storage is open: then it takes the kept value when that is. */
  signal<T>(name: string, initial: T): Signal<T> {
    const known = this.#signals.get(name);
    if (known !== undefined) return known as Signal<T>;
    const made = signal<unknown>(this.#stored.has(name) ? this.#stored.get(name) : initial);
    if (!this.#stored.has(name)) this.#stored.set(name, initial);
    this.#signals.set(name, made);
    effect(() => {
      const value = made.value;
      untracked(() => this.#keep(name, value));
    });
    return made as Signal<T>;
  }

  /** Take what is kept; settings changed before the opening are kept over it. */
  take(kept: AllMeta): void {
    const names = [...this.#signals.keys()];
    const changed = names.filter(
      (name) => this.#signals.get(name)?.peek() !== this.#stored.get(name),
    );
    this.#open = true;
    for (const [key, value] of Object.entries(kept)) {
      const name = key.slice(nameIn("").length);
      if (key.startsWith(nameIn("")) && !changed.includes(name)) this.#take(name, value);
    }
    for (const name of changed) this.#keep(name, this.#signals.get(name)?.peek());
  }

  /** Another tab has changed one. */
  async reread(name: string): Promise<void> {
    const value = await this.#phone.connection.read(["meta"], (transaction) =>
      transaction.objectStore("meta").get(nameIn(name)),
    );
    this.#take(name, value);
  }

  #take(name: string, value: unknown): void {
    this.#stored.set(name, value);
    const made = this.#signals.get(name);
    if (made !== undefined) made.value = value;
  }

  #keep(name: string, value: unknown): void {
    if (!this.#open || this.#stored.get(name) === value) return;
    this.#stored.set(name, value);
    const { connection, tabs } = this.#phone;
    connection
      .write(
        ["meta"],
        (transaction) => transaction.objectStore("meta").put(value, nameIn(name)),
        "relaxed",
      )
      .then(() => tabs.tell({ about: "setting", name }))
      .catch(() => undefined); // told by the connection's trouble; the setting holds in this tab
  }
}
