// The phone's view of everything, kept up to date one row at a time, behind signals.

import { batch, type ReadonlySignal, signal } from "@preact/signals";
import type { RecordKind } from "../domain/entries.ts";
import type { TripCounts } from "../domain/fleet/trip-counts.ts";
import type {
  AnyRecord,
  Beer,
  Brewery,
  Customer,
  Drop,
  Gyle,
  Lot,
  Place,
  Setting,
  Solution,
  Trial,
} from "../domain/records.ts";
import type { Standing } from "../domain/standing.ts";
import type { HeldRows } from "./held-rows.ts";
import type { RowKey, SubjectType, Vouched } from "./kept.ts";
import { LiveMap } from "./live-map.ts";
import type { OwnEntries } from "./own-entries.ts";
import { containerView, recordView } from "./phone-view.ts";

export class Views {
  readonly containers = new LiveMap<Standing>();
  readonly breweries = new LiveMap<Brewery>();
  readonly beers = new LiveMap<Beer>();
  readonly gyles = new LiveMap<Gyle>();
  readonly places = new LiveMap<Place>();
  readonly customers = new LiveMap<Customer>();
  readonly settings = new LiveMap<Setting>();
  readonly drops = new LiveMap<Drop>();
  readonly lots = new LiveMap<Lot>();
  readonly solutions = new LiveMap<Solution>();
  readonly trials = new LiveMap<Trial>();
  /** Trips that have ended, by customer: the brewery's server counts them. */
  readonly trips = new LiveMap<TripCounts>();
  readonly #waiting = new Set<RowKey>();
  readonly #corrections = signal<ReadonlySet<RowKey>>(new Set());
  /** Rows (`container:117`) of which a correction waits for the brewery to work it out. */
  readonly corrections: ReadonlySignal<ReadonlySet<RowKey>> = this.#corrections;
  readonly #rows: HeldRows;
  readonly #own: OwnEntries;
  readonly #byType: { [type in SubjectType]: LiveMap<never> };

  constructor(rows: HeldRows, own: OwnEntries) {
    this.#rows = rows;
    this.#own = own;
    this.#byType = {
      container: this.containers,
      brewery: this.breweries,
      beer: this.beers,
      gyle: this.gyles,
      place: this.places,
      customer: this.customers,
      setting: this.settings,
      drop: this.drops,
      lot: this.lots,
      solution: this.solutions,
      trial: this.trials,
      trips: this.trips,
    } as never;
  }

  record(type: RecordKind, id: string): AnyRecord | undefined {
    return this.#byType[type].get(id);
  }

  /** Work out these rows anew and tell the screens once. */
  refresh(keys: Iterable<RowKey>, at: Vouched | null): void {
    const changed = new Set<SubjectType>();
    for (const key of keys) changed.add(this.#refreshOne(key, at));
    this.#publish(changed);
  }

  refreshAll(at: Vouched | null): void {
    for (const map of Object.values(this.#byType)) map.clear();
    this.#waiting.clear();
    for (const [key, row] of this.#rows.all) {
      this.#mapOf(row.type)?.set(idIn(key), row.doc as never);
    }
    for (const key of this.#own.pendingRows()) this.#refreshOne(key, at);
    this.#publish(Object.keys(this.#byType) as SubjectType[]);
  }

  #refreshOne(key: RowKey, at: Vouched | null): SubjectType {
    const type = key.slice(0, key.indexOf(":")) as SubjectType;
    const id = idIn(key);
    const map = this.#mapOf(type);
    if (map === undefined) return type;
    const view = this.#viewOf(type, id, key, at);
    map.set(id, view.doc as never);
    if (view.waits) this.#waiting.add(key);
    else this.#waiting.delete(key);
    return type;
  }

  /** None for a type that only a later release of the app knows: kept, and not shown. */
  #mapOf(type: SubjectType): LiveMap<never> | undefined {
    return this.#byType[type] as LiveMap<never> | undefined;
  }

  #viewOf(type: SubjectType, id: string, key: RowKey, at: Vouched | null) {
    const row = this.#rows.get(key);
    if (type === "trips") return { doc: row?.doc, waits: false };
    const pending = this.#own.pendingOn(key);
    return type === "container"
      ? containerView(id, row, at, pending, this.#own)
      : (recordView(type satisfies RecordKind, id, row, at, pending, this.#own) as {
          doc: AnyRecord | undefined;
          waits: boolean;
        });
  }

  #publish(types: Iterable<SubjectType>): void {
    batch(() => {
      for (const type of types) this.#mapOf(type)?.publish();
      const told = this.#corrections.peek();
      const same = told.size === this.#waiting.size && [...told].every((k) => this.#waiting.has(k));
      if (!same) this.#corrections.value = new Set(this.#waiting);
    });
  }
}

const idIn = (key: RowKey): string => key.slice(key.indexOf(":") + 1);
