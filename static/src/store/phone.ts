// The phone: its storage and what of it is held in memory. The files beside this one change it,
// each in one transaction, and then say here what has changed, so that memory and screens follow
// only what is safely stored.

import { signal } from "@preact/signals";
import { Clock } from "./clock.ts";
import { Connection, type Opener } from "./connection.ts";
import { HeldRows } from "./held-rows.ts";
import {
  type Loading,
  type Row,
  type RowKey,
  type RowsAt,
  type Running,
  rowKey,
  type Vouched,
} from "./kept.ts";
import { putBack } from "./lost-storage.ts";
import { type Own, OwnEntries } from "./own-entries.ts";
import { Settings } from "./settings.ts";
import type { Tabs } from "./tabs.ts";
import { Trouble } from "./trouble.ts";
import { uuid7Maker } from "./uuid7.ts";
import { Views } from "./views.ts";

/** What a phone is given by its surroundings. */
export interface Surroundings {
  open: Opener;
  nowMs(): number;
  /** Milliseconds that nobody can set, from any start; they may stand still while the phone sleeps. */
  stopwatchMs(): number;
  random(bytes: Uint8Array<ArrayBuffer>): void;
  tabs: Tabs;
}

/** A change to an own entry: what it is now, or null for one that is gone. */
export type OwnChange = readonly [n: number, own: Own | null];

export class Phone {
  readonly connection: Connection;
  readonly clock: Clock;
  readonly tabs: Tabs;
  readonly settings: Settings;
  readonly newId: () => string;
  readonly rows = new HeldRows();
  readonly own = new OwnEntries();
  readonly views = new Views(this.rows, this.own);
  /** Turns with every change to the own entries. */
  readonly ownTurn = signal(0);
  readonly trouble = signal<string | null>(null);
  /** What the browser has lost of this phone, in words. */
  readonly loss = signal<string | null>(null);
  device = "";
  running: Running = { seq: 0, lastAt: "" };
  /** A running number that was given before, as far as is known outside the storage. */
  numberedTo = 0;
  rowsAt: RowsAt | null = null;
  loading: Loading | null = null;
  syncedAt: string | null = null;

  constructor({ open, nowMs, stopwatchMs, random, tabs }: Surroundings) {
    this.connection = new Connection(open);
    this.connection.onTrouble = (error) => {
      if (error === null || error instanceof Trouble) this.trouble.value = error?.message ?? null;
    };
    this.connection.onReopened = (database) => putBack(this, database);
    this.settings = new Settings(this);
    this.newId = uuid7Maker(nowMs, random);
    this.clock = new Clock({ nowMs, stopwatchMs, page: this.newId() });
    this.tabs = tabs;
  }

  /** Rows of a first load under way vouch for themselves, each by its own position. */
  get vouched(): Vouched | null {
    if (this.rowsAt !== null) return this.rowsAt;
    return this.loading === null ? null : { epoch: this.loading.epoch, whole: 0 };
  }

  ownChanged(changes: readonly OwnChange[]): void {
    const touched = new Set<RowKey>();
    const note = (own: Own | undefined | null) => {
      if (own) for (const key of this.own.touches(own.kept.entry)) touched.add(key);
    };
    for (const [n, own] of changes) {
      note(this.own.byKey(n));
      if (own === null) this.own.remove(n);
      else this.own.put(own);
      note(own);
    }
    this.views.refresh(touched, this.vouched);
    this.ownTurn.value += 1;
  }

  /** Newer rows, held from now on up to `at`; own entries that they hold need no more stepping. */
  rowsChanged(rows: readonly Row[], at: RowsAt): void {
    const touched = new Set<RowKey>();
    for (const row of rows) {
      this.rows.put(row);
      touched.add(rowKey(row.type, row.id));
    }
    this.rowsAt = at;
    for (const key of this.#settleHeld()) touched.add(key);
    this.views.refresh(touched, at);
  }

  /** Rows of a first load that is not finished: shown, while no cursor vouches for them. */
  rowsAdded(rows: readonly Row[]): void {
    const keys = rows.map((row) => rowKey(row.type, row.id));
    for (const row of rows) this.rows.put(row);
    this.views.refresh(keys, this.vouched);
  }

  /** More of the rows that the phone keeps; one that has changed since is held already. */
  rowsRead(rows: readonly Row[]): void {
    for (const row of rows) if (this.rows.isNews(row)) this.rows.put(row);
    this.views.refreshAll(this.vouched);
  }

  /** All rows, in place of whatever was held. */
  rowsReplaced(rows: Iterable<Row>, at: RowsAt | null): void {
    this.rows.clear();
    for (const row of rows) this.rows.put(row);
    this.rowsAt = at;
    this.#settleHeld();
    this.views.refreshAll(this.vouched);
  }

  #settleHeld(): Set<RowKey> {
    const touched = new Set<RowKey>();
    for (const own of this.own.pending()) {
      if (own.where !== "brewery" || own.kept.epoch !== this.rowsAt?.epoch) continue;
      if (own.kept.position > this.rowsAt.whole) continue;
      for (const key of this.own.touches(own.kept.entry)) touched.add(key);
      this.own.settle(own.n);
    }
    return touched;
  }
}
