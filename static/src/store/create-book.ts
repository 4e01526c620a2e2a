// The book: what the screens may ask of the phone and tell it. Everything they show comes from
// here, and everything a person does goes through here as an entry.

import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Facts, Kind, MadeEntry } from "../domain/entries.ts";
import { type Account, accountOf, personOf } from "./account.ts";
import { letGo, offerAgain, putRight, type Repair } from "./attention.ts";
import { catchUp, hearNews } from "./catch-up.ts";
import { renumberedDraft, settledDraft, undoDraft } from "./corrections.ts";
import type { Imported } from "./outbox-file.ts";
import { type OwnEntry, shownEntries } from "./own-shown.ts";
import type { Part } from "./pages.ts";
import type { Phone } from "./phone.ts";
import { readAll } from "./reading.ts";
import { whyNot } from "./rights.ts";
import { type Draft, type Saved, save } from "./saving.ts";
import { NotPossible } from "./trouble.ts";

/** What has not reached the brewery yet, and whether the phone can keep it. */
export interface Waiting {
  count: number;
  oldestAt: string | null;
  attention: number;
  trouble: string | null;
}

export class Book {
  readonly containers;
  /** The one brewery, under the id "brewery", once it has said who it is. */
  readonly breweries;
  readonly beers;
  readonly gyles;
  readonly places;
  readonly customers;
  /** The brewery's own values of figures, by the figure's id. */
  readonly brewerySettings;
  /** Stops of the van, made up and handed over. */
  readonly drops;
  readonly lots;
  readonly solutions;
  readonly trials;
  /** Trips that have ended, by customer. */
  readonly trips;
  /** Rows (`container:117`) whose correction only the brewery can work out; it is on its way. */
  readonly corrections;
  readonly ownEntries: ReadonlySignal<OwnEntry[]>;
  readonly waiting: ReadonlySignal<Waiting>;
  /** How this phone stands with the brewery, and its people. */
  readonly account: ReadonlySignal<Account>;
  readonly #phone: Phone;
  readonly #person: Signal<string>;
  readonly #hearers: (() => void)[] = [];
  readonly #reached = signal<Part | null>(null);
  /** Whether what the bench shows before a container is typed is read. */
  readonly begun = computed(() => this.#reached.value !== null);
  /** Whether all containers that are full at the brewery are known, and how they stand. */
  readonly fullKnown = computed(() => this.begun.value && this.#reached.value !== "bench");
  /** Whether all rows are read; until then not all containers are known, and nothing is recorded. */
  readonly whole = computed(() => this.#reached.value === "rest");
  #opening: Promise<void> | null = null;

  constructor(phone: Phone) {
    this.#phone = phone;
    this.#person = personOf(phone);
    this.account = accountOf(phone);
    this.containers = phone.views.containers.signal;
    this.breweries = phone.views.breweries.signal;
    this.beers = phone.views.beers.signal;
    this.gyles = phone.views.gyles.signal;
    this.places = phone.views.places.signal;
    this.customers = phone.views.customers.signal;
    this.brewerySettings = phone.views.settings.signal;
    this.drops = phone.views.drops.signal;
    this.lots = phone.views.lots.signal;
    this.solutions = phone.views.solutions.signal;
    this.trials = phone.views.trials.signal;
    this.trips = phone.views.trips.signal;
    this.corrections = phone.views.corrections;
    this.ownEntries = computed(() => {
      phone.ownTurn.value;
      return shownEntries(phone.own);
    });
    this.waiting = computed(() => {
      phone.ownTurn.value;
      const { unsentCount: count, attentionCount: attention } = phone.own;
      const oldestAt = phone.own.firstUnsent()?.kept.savedAt ?? null;
      return { count, oldestAt, attention, trouble: phone.trouble.value ?? phone.loss.value };
    });
  }

  /**
   * Read everything that the phone holds; `begun`, `fullKnown` and `whole` tell how far that is.
   * Settles within seconds; rejects with words for a person.
   */
  open(): Promise<void> {
    this.#opening ??= this.#open().catch((error: unknown) => {
      this.#opening = null; // the next call tries again
      throw error;
    });
    return this.#opening;
  }

  async #open(): Promise<void> {
    const phone = this.#phone;
    await readAll(phone, (part) => {
      this.#reached.value = part;
    });
    hearNews(phone, (name) => phone.settings.reread(name));
    await catchUp(phone); // with what other tabs did while this one was reading
  }

  /** What identifies this device in the ledger; known once the book is open. */
  get device(): string {
    return this.#phone.device;
  }

  /** The time, as far as the phone knows it: its own clock put right by the brewery's. */
  now(): string {
    return this.#phone.clock.now();
  }

  /** A setting of this phone, kept; "person" is who makes the entries. */
  setting<T>(name: string, initial: T): Signal<T> {
    return this.#phone.settings.signal(name, initial);
  }

  /**
   * Why who has this phone in hand may not record this, about that entry if it is a correction, naming
   * who may; null where they may.
   */
  whyNot(kind: Kind, target?: MadeEntry): string | null {
    return whyNot(this.account.value, this.#person.value, kind, target);
  }

  async record(
    kind: Kind,
    subject: string,
    facts: Facts,
    { happenedAt }: { happenedAt?: string } = {},
  ): Promise<Saved> {
    const draft = { kind, subject, facts };
    return this.#saveOne(happenedAt === undefined ? draft : { ...draft, happenedAt });
  }

  /** Several entries in one transaction: all are saved or none. */
  async recordMany(drafts: readonly Draft[]): Promise<Saved[]> {
    await this.open();
    for (const { kind } of drafts) this.#insist(kind);
    const saved = await save(this.#phone, drafts, this.#who());
    this.#tell();
    return saved;
  }

  /** Void an entry. One of another phone is to be given as the brewery told it. */
  async undo(entryId: string, told?: MadeEntry): Promise<Saved> {
    await this.open();
    this.#insist("voided", this.#entry(entryId) ?? told);
    return this.#saveOne(undoDraft(this.#phone, entryId, told?.subject));
  }

  /** The entry was about another container. */
  async moveTo(entryId: string, number: string, told?: MadeEntry): Promise<Saved> {
    await this.open();
    this.#insist("renumbered", this.#entry(entryId) ?? told);
    return this.#saveOne(renumberedDraft(this.#phone, entryId, number, told?.subject));
  }

  /** A person's way out of a query: "right", "void:<entry>" or "renumber:<entry>:<number>". */
  async settle(subject: string, queryId: string, way: string): Promise<Saved> {
    await this.open();
    return this.#saveOne(settledDraft(this.#phone, subject, queryId, way));
  }

  /** Put right an entry that the brewery did not take: a new entry in place of it. */
  async putRight(entryId: string, repair: Repair): Promise<Saved> {
    await this.open();
    const saved = await putRight(this.#phone, entryId, repair, this.#who());
    this.#tell();
    return saved;
  }

  /** Offer entries that wait for a person once more, as they are. */
  async offerAgain(entryIds: readonly string[]): Promise<void> {
    await this.open();
    await offerAgain(this.#phone, entryIds);
    this.#tell();
  }

  /** A person has decided that an entry which the brewery did not take is not needed. */
  async letGo(entryId: string): Promise<void> {
    await this.open();
    await letGo(this.#phone, entryId);
  }

  /** What has not reached the brewery, as a file to carry there. */
  async exportOutbox(): Promise<Blob> {
    const { exportOutbox } = await import("./outbox-file.ts");
    return exportOutbox(this.#phone);
  }

  /** Read such a file in, from this phone or another one. */
  async importOutbox(file: Blob): Promise<Imported> {
    const [{ importOutbox }] = await Promise.all([import("./outbox-file.ts"), this.open()]);
    const imported = await importOutbox(this.#phone, file);
    this.#tell();
    return imported;
  }

  /** Look again at what other tabs may have changed while this one was asleep. */
  async catchUp(): Promise<void> {
    await this.open();
    await catchUp(this.#phone);
  }

  /** Called after every save, so that what was saved can set out at once. */
  onSaved(hear: () => void): void {
    this.#hearers.push(hear);
  }

  /** Throws with words for who has the phone in hand, if they may not. */
  #insist(kind: Kind, target?: MadeEntry): void {
    const why = this.whyNot(kind, target);
    if (why !== null) throw new NotPossible(why);
  }

  #entry(id: string): MadeEntry | undefined {
    return this.#phone.own.byId(id)?.kept.entry;
  }

  async #saveOne(draft: Draft): Promise<Saved> {
    const [saved] = await this.recordMany([draft]);
    return saved as Saved;
  }

  #who(): string {
    return this.#person.peek().trim().slice(0, 60);
  }

  #tell(): void {
    for (const hear of this.#hearers) hear();
  }
}
