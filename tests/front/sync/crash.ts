// A crash of a page at any of its await points: nothing of the page runs after it, and open
// transactions are taken back, as a browser does it.

import type { Database } from "../../../static/src/store/schema.ts";

/** A new one each time: what waits for it can then be forgotten with it. */
const never = (): Promise<never> => new Promise(() => undefined);

/** What a dead page still asks for, up to its next await, is never answered. */
const DEAD_STORE = new Proxy({}, { get: () => never });

export class Fuse {
  /** Points passed since the fuse was set. */
  passed = 0;
  burnt = false;
  /** Whether there is no room left for anything that is written. */
  full = false;
  /** Resolves when the page has died. */
  readonly death: Promise<"crashed">;
  #at: number;
  #die: (word: "crashed") => void = () => undefined;
  readonly #open = new Set<{ abort(): void }>();

  /** Crash at this many points from now; 0 for never. */
  constructor(at: number) {
    this.#at = at;
    this.death = new Promise((resolve) => {
      this.#die = resolve;
    });
  }

  /** Whether the page is in the middle of something with its storage. */
  get storing(): boolean {
    return this.#open.size > 0;
  }

  set(at: number): void {
    this.passed = 0;
    this.#at = at;
  }

  /** Time goes by while the page waits for its storage: it may die here too. */
  tick(): void {
    if (this.burnt) return;
    this.passed += 1;
    if (this.passed === this.#at) this.crash();
  }

  /** An await point of the page. A page that is dead gets no further than this. */
  async point(): Promise<void> {
    this.tick();
    if (this.burnt) await never();
  }

  crash(): void {
    this.burnt = true;
    for (const transaction of this.#open) transaction.abort();
    this.#open.clear();
    this.#die("crashed");
  }

  /** The same database, with a point before and after everything that is asked of it. */
  wrap(database: Database): Database {
    return new Proxy(database, {
      get: (target, name) => {
        if (name === "transaction") {
          return (...asked: Parameters<Database["transaction"]>) =>
            this.#wrapTransaction(target.transaction(...asked));
        }
        const value = Reflect.get(target, name, target) as unknown;
        return typeof value === "function" ? value.bind(target) : value;
      },
    });
  }

  #wrapTransaction(transaction: ReturnType<Database["transaction"]>) {
    if (this.burnt) transaction.abort();
    else this.#open.add(transaction);
    const done = transaction.done.finally(() => this.#open.delete(transaction));
    const after = done.then(
      () => this.point(),
      (error: unknown) => (this.burnt ? never() : Promise.reject(error)),
    );
    after.catch(() => undefined); // whoever asked for `done` hears it
    return new Proxy(transaction, {
      get: (target, name) => {
        if (name === "done") return after;
        if (name === "objectStore") {
          return (store: never) =>
            this.burnt ? DEAD_STORE : this.#wrapStore(target.objectStore(store));
        }
        if (name === "abort" && this.burnt) return () => undefined; // done by the crash already
        const value = Reflect.get(target, name, target) as unknown;
        return typeof value === "function" ? value.bind(target) : value;
      },
    });
  }

  #wrapStore<S extends object>(store: S): S {
    return new Proxy(store, {
      get: (target, name) => {
        const value = Reflect.get(target, name, target) as unknown;
        if (typeof value !== "function") return value;
        const grows = name === "add" || name === "put";
        return (...asked: unknown[]) =>
          this.#guarded(() => {
            if (!grows || !this.full) return value.apply(target, asked);
            return Promise.reject(new DOMException("no room", "QuotaExceededError"));
          });
      },
    });
  }

  #guarded<T>(request: () => Promise<T>): Promise<T> {
    // The point before is passed at once, so that requests keep the order they were made in.
    this.tick();
    if (this.burnt) return never();
    const answered = request().then(async (result) => {
      await this.point();
      return result;
    });
    answered.catch(() => undefined); // a transaction taken back rejects what nobody awaits any more
    return answered;
  }
}
