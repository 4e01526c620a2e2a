// Sending entries: in the phone's own order, each offered once in a round. What has not been
// answered is offered first in the next.

import { takeAnswers } from "../store/answers.ts";
import { asTime } from "../store/clock.ts";
import type { Own } from "../store/own-entries.ts";
import type { Phone } from "../store/phone.ts";
import { type Batch, batchOf, MOST_ENTRIES } from "./batch.ts";
import { pushAnswer, serverTime } from "./forms.ts";
import { noUse, type Transport } from "./transport.ts";

const TOO_LARGE = { title: "This entry is too large", detail: "Make its words shorter." };

export class Pusher {
  /** Entries that were not judged in this round. */
  later = 0;
  readonly #phone: Phone;
  readonly #transport: Transport;
  readonly #app: string;
  #offered = 0;
  #most = MOST_ENTRIES;

  constructor(phone: Phone, transport: Transport, app: string) {
    this.#phone = phone;
    this.#transport = transport;
    this.#app = app;
  }

  begin(): void {
    this.#offered = 0;
    this.later = 0;
  }

  hasMore(): boolean {
    return (this.#phone.own.lastUnsent()?.n ?? 0) > this.#offered;
  }

  async push(): Promise<void> {
    await this.#send(this.#phone.own.unsent().filter(({ n }) => n > this.#offered));
  }

  /** A held entry may have been released since, by a person or by a new release. */
  async askAboutHeld(): Promise<void> {
    const asked = new Set<number>();
    for (;;) {
      const held = this.#phone.own.held().filter(({ n }) => !asked.has(n));
      if (held.length === 0) return;
      for (const { n } of await this.#send(held)) asked.add(n);
    }
  }

  /** As many of these as go at once; answers those that were dealt with. */
  async #send(waiting: readonly Own[]): Promise<readonly Own[]> {
    const { clock, device } = this.#phone;
    const doubtful = waiting.some(({ kept }) => clock.doubts(kept));
    if (doubtful && !clock.sure) await this.#askTheTime();
    const batch = batchOf(waiting, this.#most, ({ kept }) => clock.lateMs(kept, device));
    const sentMs = clock.deviceMs();
    const body = this.#envelope(batch, sentMs);
    const reply = await this.#transport({ path: "/api/push", body });
    const receivedMs = clock.deviceMs();
    if (reply.status === 413) {
      await this.#tooLarge(batch.entries);
      return batch.entries.length === 1 ? batch.entries : [];
    }
    const ids = batch.entries.map(({ kept }) => kept.entry.id);
    const answer = reply.status === 200 ? pushAnswer(reply.body, ids) : null;
    if (answer === null) throw noUse(reply);
    const offset = clock.measured(answer.serverTime, sentMs, receivedMs);
    clock.hear(offset);
    await takeAnswers(this.#phone, answer.epoch, answer.answers, offset);
    if (batch.entries[0]?.where === "phone") this.#goOn(batch.entries);
    this.later += answer.answers.filter(({ verdict }) => verdict === "later").length;
    return batch.entries;
  }

  /** When an entry was made is told against the brewery's time now: that has to be known first. */
  async #askTheTime(): Promise<void> {
    const { clock } = this.#phone;
    const sentMs = clock.deviceMs();
    const reply = await this.#transport({ path: "/api/health" });
    const receivedMs = clock.deviceMs();
    const time = reply.status === 200 ? serverTime(reply.body) : null;
    if (time === null) throw noUse(reply);
    const offset = clock.measured(time, sentMs, receivedMs);
    clock.hear(offset);
    await takeAnswers(this.#phone, "", [], offset);
  }

  #envelope({ entries, lateMs, json }: Batch, sentMs: number): string {
    const about = {
      proto: 1,
      app: this.#app,
      epoch: this.#phone.rowsAt?.epoch ?? null,
      // In the clock that the entries' own times were told by.
      sent_at: asTime(sentMs + this.#phone.clock.offsetMs - lateMs),
      device: this.#phone.device,
      ...this.#waitingAfter(entries),
    };
    return `${JSON.stringify(about).slice(0, -1)},"entries":${json}}`;
  }

  /** For the list of devices: how much stays behind on this phone, and since when. */
  #waitingAfter(entries: readonly Own[]) {
    const going = new Set(entries.map(({ n }) => n));
    const left = this.#phone.own.unsent().filter(({ n }) => !going.has(n));
    return { waiting: left.length, oldest_waiting_at: left[0]?.kept.savedAt ?? null };
  }

  /** Fewer at a time; a single one that is too large waits for a person. */
  async #tooLarge(entries: readonly Own[]): Promise<void> {
    const [only] = entries;
    if (entries.length !== 1 || only === undefined) {
      this.#most = Math.ceil(entries.length / 2);
      return;
    }
    if (only.where !== "phone") return; // held as it is: there is nothing to be done here
    const { id } = only.kept.entry;
    await takeAnswers(this.#phone, "", [{ id, verdict: "refused", problem: TOO_LARGE }], null);
    this.#goOn(entries);
    this.#most = MOST_ENTRIES;
  }

  #goOn(entries: readonly Own[]): void {
    this.#offered = Math.max(this.#offered, ...entries.map(({ n }) => n));
  }
}
