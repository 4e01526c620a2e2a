// A brewery, some phones and a network between them that can be made bad.

import assert from "node:assert/strict";
import { canonical } from "../../../static/src/store/canonical.ts";
import type { Book } from "../../../static/src/store/create-book.ts";
import type { Phone } from "../../../static/src/store/phone.ts";
import { Sync } from "../../../static/src/sync/create-sync.ts";
import type { Transport } from "../../../static/src/sync/transport.ts";
import { aDevice, anOpenPage, type Device, openerOf, START_MS } from "../store/a-phone.ts";
import { Brewery } from "./a-brewery.ts";
import { chanceFrom } from "./chance.ts";
import { Fuse } from "./crash.ts";
import { expectedStandings } from "./oracle.ts";

type Network = (ask: Transport, which: number) => Transport;
const GOOD_NETWORK: Network = (ask) => ask;

/** A phone whose page can die and be opened again on the same storage. */
export class SimPhone {
  phone!: Phone;
  book!: Book;
  sync!: Sync;
  fuse = new Fuse(0);
  /** Questions asked in the last round. */
  asked = 0;
  /** By how much the phone's clock is fast. */
  skewMs = 0;
  readonly #world: World;
  readonly #which: number;
  readonly device: Device;

  constructor(world: World, which: number, seed: number) {
    this.#world = world;
    this.#which = which;
    this.device = aDevice(seed * 100 + which);
  }

  async restart(): Promise<void> {
    if (!this.fuse.burnt) this.fuse.crash();
    const fuse = new Fuse(0);
    this.fuse = fuse;
    this.device.tabs = [];
    this.device.nowMs = this.#world.nowMs + this.skewMs;
    this.device.stopwatchMs = 0;
    const open = openerOf(this.device);
    const page = await anOpenPage(this.device, async (watching) => fuse.wrap(await open(watching)));
    this.phone = page.phone;
    this.book = page.book;
    const transport: Transport = async (question) => {
      this.asked += 1;
      await fuse.point();
      const reply = await this.#world.ask(question, this.#which);
      await fuse.point();
      return reply;
    };
    this.sync = new Sync(page.phone, {
      ready: () => page.book.open(),
      transport,
      alone: (work) => work(),
      nowMs: () => this.#world.nowMs,
      random: chanceFrom(this.#which),
      app: "test",
    });
  }

  async go(): Promise<void> {
    this.asked = 0;
    await this.sync.go("asked");
  }
}

export class World {
  nowMs = START_MS;
  network: Network = GOOD_NETWORK;
  brewery = new Brewery(() => this.nowMs);
  readonly phones: SimPhone[] = [];
  /** Standings that were compared with what they ought to be. */
  exactViews = 0;

  static async make(phones: number, seed: number): Promise<World> {
    const world = new World();
    for (let which = 0; which < phones; which += 1) {
      const phone = new SimPhone(world, which, seed);
      world.phones.push(phone);
      await phone.restart();
    }
    return world;
  }

  phone(which: number): SimPhone {
    return this.phones[which] as SimPhone;
  }

  ask(question: Parameters<Transport>[0], which: number): ReturnType<Transport> {
    return this.network(async (asked) => this.brewery.answer(asked), which)(question);
  }

  /** Time goes by, for everybody. */
  wait(ms: number): void {
    this.nowMs += ms;
    for (const { device } of this.phones) {
      device.nowMs += ms;
      device.stopwatchMs += ms;
    }
  }

  copy(): Pick<Brewery, "head" | "taken" | "rows"> {
    const { head, taken, rows } = this.brewery;
    return structuredClone({ head, taken, rows });
  }

  /** The brewery's ledger is put back to a copy, which begins a new epoch. */
  restore(copy: Pick<Brewery, "head" | "taken" | "rows">): void {
    Object.assign(this.brewery, structuredClone(copy), { epoch: `${this.brewery.epoch}'` });
    this.brewery.accepted = [];
  }

  /** The network is good and everybody has time. */
  async heal(): Promise<void> {
    this.network = GOOD_NETWORK;
    this.brewery.later.clear();
    for (let round = 0; round < 3; round += 1) {
      for (const phone of this.phones) await phone.go();
    }
  }

  async hasOnce(which: number, id: string): Promise<boolean> {
    return (await storedPlaces(this.phone(which).phone, id)).length === 1;
  }

  /** Sync.md, A.10: rows and cursor belong together, and memory is what is stored. */
  async holdsTogether(): Promise<void> {
    for (const sim of this.phones) {
      const { rowsAt, rows } = sim.phone;
      if (rowsAt !== null && rowsAt.epoch === this.brewery.epoch) {
        for (const [key, row] of this.brewery.rows) {
          if (row.position > rowsAt.cursor) continue;
          assert.equal(canonical(rows.get(key)), canonical(row), `cursor is ahead of ${key}`);
        }
      }
      const again = await anOpenPage({ ...sim.device, tabs: [] });
      assertSame(viewOf(sim.phone), viewOf(again.phone), "memory is not what is stored");
      assert.deepEqual(again.phone.rowsAt, rowsAt);
      assert.equal(again.phone.rows.checksum, rows.checksum);
      assert.deepEqual(again.book.waiting.value, sim.book.waiting.value);
      for (const [number, standing] of expectedStandings(sim.phone, this.brewery)) {
        const shown = sim.book.containers.value.get(number);
        assert.equal(canonical(shown), canonical(standing), `view of ${number}`);
        this.exactViews += 1;
      }
    }
  }

  /** Everything has arrived everywhere. */
  async isSettled(): Promise<void> {
    const theirs = new Map(
      [...this.brewery.rows].map(([key, { doc }]) => [key, canonical(doc)] as const),
    );
    for (const { book, phone } of this.phones) {
      assert.equal(book.waiting.value.count, 0, "entries still wait");
      assertSame(viewOf(phone), theirs, "a phone shows something else than the brewery");
      assert.equal(phone.rows.checksum, this.brewery.checksum());
      assert.equal(book.corrections.value.size, 0, "a correction still waits");
      for (const id of this.brewery.taken.keys()) {
        if (phone.own.byId(id) !== undefined) assert.equal(phone.own.byId(id)?.where, "brewery");
      }
    }
  }
}

export const storedPlaces = async (phone: Phone, id: string): Promise<string[]> =>
  phone.connection.read(["outbox", "sent", "attention"], async (transaction) => {
    const names = ["outbox", "sent", "attention"] as const;
    const found = await Promise.all(
      names.map(async (name) => {
        const all = await transaction.objectStore(name).getAll();
        return all.filter(({ entry }) => entry.id === id).map(() => name);
      }),
    );
    return found.flat();
  });

/** Everything that a phone shows, by row, in canonical JSON. */
const viewOf = ({ views }: Phone): Map<string, string> => {
  const maps = {
    container: views.containers,
    brewery: views.breweries,
    beer: views.beers,
    gyle: views.gyles,
    place: views.places,
    customer: views.customers,
    setting: views.settings,
    drop: views.drops,
    lot: views.lots,
    solution: views.solutions,
    trial: views.trials,
  };
  const all = Object.entries(maps).flatMap(([type, map]) =>
    [...(map.signal.peek() as ReadonlyMap<string, unknown>)].map(
      ([id, doc]) => [`${type}:${id}`, canonical(doc)] as const,
    ),
  );
  return new Map(all);
};

/** Fails with the first row that differs, which is easier to read than all of them. */
const assertSame = (shown: Map<string, string>, truth: Map<string, string>, why: string): void => {
  for (const key of new Set([...shown.keys(), ...truth.keys()])) {
    assert.equal(shown.get(key), truth.get(key), `${why}: ${key}`);
  }
};
