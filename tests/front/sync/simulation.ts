// One simulated spell of work: phones, a brewery and chance. Every step is followed by a look at
// what must always hold; the end must find everybody in agreement.

import assert from "node:assert/strict";
import type { Draft } from "../../../static/src/store/saving.ts";
import { FIRKIN, fillFrom } from "../store/a-phone.ts";
import { type SimPhone, World } from "./a-world.ts";
import { BadNetwork } from "./bad-network.ts";
import { Chance } from "./chance.ts";

const PHONES = 3;
const NUMBERS = ["1", "2", "F3", "K4", "5"];
const uuid = (n: number): string => `0190a000-0000-7000-8000-${String(n).padStart(12, "0")}`;
const GYLES = [uuid(1), uuid(2)];
const [BEER, CUSTOMER, COLD_ROOM, SOLUTION] = [uuid(3), uuid(4), uuid(5), uuid(6)] as const;

export class Simulation {
  readonly seed: number;
  readonly chance: Chance;
  readonly network: BadNetwork;
  world!: World;
  /** What each phone has called saved, and where a person let go of it. */
  readonly told: Set<string>[] = Array.from({ length: PHONES }, () => new Set());
  readonly #deeds: [weight: number, deed: () => Promise<void>][] = [
    [10, () => this.#survivably((phone, which) => this.#save(phone, which, this.#drafts()))],
    [3, () => this.#survivably((phone, which) => this.#correct(phone, which))],
    [6, () => this.#survivably((phone) => this.#go(phone))],
    [3, () => this.#survivably((phone, which) => this.#both(phone, which))],
    [1, () => this.#restart()],
    [1, async () => this.world.wait(this.chance.below(5 * 60_000))],
    [1, async () => this.#stall()],
  ];

  constructor(seed: number) {
    this.seed = seed;
    this.chance = new Chance(seed);
    this.network = new BadNetwork(this.chance, 30);
  }

  async run(steps: number): Promise<void> {
    this.world = await World.make(PHONES, this.seed + 1);
    this.world.network = this.network.over;
    for (let step = 0; step < steps; step += 1) {
      this.world.wait(1 + this.chance.below(2000));
      await this.#weighted()();
      await this.world.holdsTogether();
      await this.#nothingIsLost();
    }
    await this.world.heal();
    await this.world.isSettled();
    await this.#nothingIsLost();
    const { taken, held, accepted } = this.world.brewery;
    assert.equal(new Set(accepted).size, accepted.length, "an entry was taken twice");
    for (const id of this.told.flatMap((ids) => [...ids])) {
      const refused = this.world.phones.some(
        ({ phone }) => phone.own.byId(id)?.where === "attention",
      );
      assert.ok(taken.has(id) || held.has(id) || refused, `${id} is nowhere`);
    }
  }

  #weighted(): () => Promise<void> {
    let at = this.chance.below(this.#deeds.reduce((sum, [weight]) => sum + weight, 0));
    for (const [weight, deed] of this.#deeds) {
      if (at < weight) return deed;
      at -= weight;
    }
    throw new Error("weights do not add up");
  }

  /** A deed that the page may die in, and the phone comes back from. */
  async #survivably(deed: (phone: SimPhone, which: number) => Promise<void>): Promise<void> {
    const which = this.chance.below(PHONES);
    const phone = this.world.phone(which);
    phone.fuse.set(this.chance.in(25) ? 1 + this.chance.below(60) : 0);
    const ended = await Promise.race([deed(phone, which).then(() => "through"), phone.fuse.death]);
    phone.fuse.set(0);
    if (ended === "through") return;
    this.network.count("crash");
    await phone.restart();
  }

  async #save(phone: SimPhone, which: number, drafts: Draft[]): Promise<void> {
    for (const { entry } of await phone.book.recordMany(drafts)) this.told[which]?.add(entry.id);
  }

  /** A round makes progress or waits longer (A.10, 7). */
  async #go(phone: SimPhone): Promise<void> {
    const { nowMs } = this.world;
    const before = phone.sync.pace.dueMs;
    await phone.go();
    const { failures, dueMs } = phone.sync.pace;
    assert.ok(phone.asked > 0 && phone.asked < 100, `${phone.asked} questions in one round`);
    assert.ok(dueMs > nowMs || dueMs > before, "the next round is due at once");
    if (failures === 0) assert.equal(phone.phone.rowsAt?.epoch, this.world.brewery.epoch);
  }

  async #both(phone: SimPhone, which: number): Promise<void> {
    await Promise.all([this.#go(phone), this.#save(phone, which, this.#drafts())]);
  }

  async #correct(phone: SimPhone, which: number): Promise<void> {
    const own = phone.book.ownEntries.value.filter(
      ({ where, entry }) => where !== "attention" && NUMBERS.includes(entry.subject),
    );
    if (own.length === 0) return;
    const { entry } = this.chance.of(own);
    const { book } = phone;
    const saved =
      this.chance.in(70) || ["voided", "renumbered"].includes(entry.kind)
        ? await book.undo(entry.id)
        : await book.moveTo(entry.id, this.chance.of(NUMBERS));
    this.told[which]?.add(saved.entry.id);
  }

  async #restart(): Promise<void> {
    await this.chance.of(this.world.phones).restart();
  }

  /** The brewery cannot judge some entries for a while. */
  #stall(): void {
    const { later } = this.world.brewery;
    if (later.size > 0) later.clear();
    else for (const ids of this.told) for (const id of ids) if (this.chance.in(30)) later.add(id);
  }

  /** A.10, 1: what was called saved is in exactly one place on its phone. */
  async #nothingIsLost(): Promise<void> {
    for (const [which, ids] of this.told.entries()) {
      const { own } = this.world.phone(which).phone;
      for (const id of ids) {
        const where = own.byId(id)?.where;
        assert.ok(where !== undefined, `${id} is not on phone ${which}`);
        if (where === "brewery") assert.ok(this.world.brewery.taken.has(id), `${id} was not taken`);
      }
    }
  }

  #drafts(): Draft[] {
    return Array.from({ length: this.chance.in(20) ? 4 : 1 }, () => this.#draft());
  }

  #draft(): Draft {
    const subject = this.chance.of(NUMBERS);
    const volume = 40_000 + this.chance.below(900);
    return this.chance.of<Draft>([
      { kind: "registered", subject, facts: { ...FIRKIN, shape: "cask" } },
      { kind: "filled", subject, facts: fillFrom(this.chance.of(GYLES), volume) },
      { kind: "filled", subject, facts: fillFrom(this.chance.of(GYLES), volume) },
      { kind: "washed", subject, facts: {} },
      { kind: "tapped", subject, facts: {} },
      { kind: "emptied", subject, facts: {} },
      { kind: "sent", subject, facts: { customer: CUSTOMER, due_on: null } },
      { kind: "returned", subject, facts: {} },
      { kind: "noted", subject, facts: { words: this.chance.of(["fine", "refuse", "hold"]) } },
      { kind: "beer", subject: BEER, facts: { name: `Beer ${volume}` } },
      { kind: "gyle", subject: GYLES[0] ?? "", facts: { volume_ml: volume } },
      { kind: "chased", subject: CUSTOMER, facts: { words: "asked" } },
      { kind: "temperature", subject: COLD_ROOM, facts: { series: this.#readings() } },
      { kind: "solution_used", subject: SOLUTION, facts: { uses: 1 + this.chance.below(3) } },
      { kind: "solution_checked", subject: SOLUTION, facts: { strength_mg_per_l: volume } },
    ]);
  }

  #readings(): [at: string, tempDecidegc: number][] {
    const minute = String(10 + this.chance.below(20));
    return [[`2026-03-02T08:${minute}:00.000Z`, 100 + this.chance.below(30)]];
  }
}
