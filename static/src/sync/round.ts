// One round with the brewery: everything unsent goes there, then everything new comes from there.
// Each step is decided from where things stand, so a round may be cut off anywhere and begun anew.

import { beginLoad, type Loaded, takePage } from "../store/first-load.ts";
import { type RowKey, rowKey, type Why } from "../store/kept.ts";
import type { Phone } from "../store/phone.ts";
import { takeRows, tidyPages } from "../store/take-rows.ts";
import { isAnotherLedger, isLedger, pullAnswer, snapshotHead, snapshotPage } from "./forms.ts";
import type { Pusher } from "./push.ts";
import { NoAnswer, noUse, type Reply, type Transport } from "./transport.ts";

const PULL_ROWS = 1000;

export type Step = "push" | "begin-load" | "load-page" | "pull" | "rest";

export interface Standpoint {
  unsent: boolean;
  loading: boolean;
  /** Whether there is a finished load that can be trusted. */
  rows: boolean;
  whole: boolean;
}

/** Entries first: what is only on this phone is what can be lost. */
export const nextStep = ({ unsent, loading, rows, whole }: Standpoint): Step => {
  if (unsent) return "push";
  if (loading) return "load-page";
  if (!rows) return "begin-load";
  return whole ? "rest" : "pull";
};

export const DISAGREES =
  "The records on this phone and at the brewery do not agree. They are fetched once more.";

export class Round {
  readonly #phone: Phone;
  readonly #transport: Transport;
  readonly #pusher: Pusher;
  /** Why all rows have to be fetched anew, if they have. */
  #fresh: Why | null = null;
  #whole = false;
  #healed = false;
  /** Rows that came with this round's pulls. */
  readonly came = new Set<RowKey>();
  /** The version of what the brewery says of this phone's people; null where it said none. */
  me: number | null = null;
  readonly #onLoaded: (loaded: Loaded) => void;

  /** `onLoaded` hears what a finished load has brought to light. */
  constructor(
    phone: Phone,
    transport: Transport,
    pusher: Pusher,
    onLoaded: (loaded: Loaded) => void,
  ) {
    this.#phone = phone;
    this.#transport = transport;
    this.#pusher = pusher;
    this.#onLoaded = onLoaded;
  }

  /** Rejects with NoAnswer where it could not go on. What was done until then is kept. */
  async run(): Promise<void> {
    this.#pusher.begin();
    for (let step = this.#next(); step !== "rest"; step = this.#next()) {
      if (step === "push") await this.#pusher.push();
      else if (step === "begin-load") await this.#beginLoad();
      else if (step === "load-page") await this.#loadPage();
      else await this.#pull();
    }
    if (this.came.size > 0) await tidyPages(this.#phone);
  }

  #next(): Step {
    const { loading, rowsAt } = this.#phone;
    return nextStep({
      unsent: this.#pusher.hasMore(),
      loading: loading !== null && this.#fresh === null,
      rows: rowsAt !== null && this.#fresh === null,
      whole: this.#whole,
    });
  }

  async #beginLoad(): Promise<void> {
    const reply = await this.#transport({ path: "/api/snapshot" });
    await beginLoad(this.#phone, orNoAnswer(reply, snapshotHead(reply.body)), this.#fresh);
    this.#fresh = null;
  }

  async #loadPage(): Promise<void> {
    const after = this.#phone.loading?.after ?? null;
    const from = after === null ? "" : `after=${encodeURIComponent(after)}&`;
    const reply = await this.#transport({ path: `/api/snapshot/pages?${from}limit=${PULL_ROWS}` });
    const loaded = await takePage(this.#phone, orNoAnswer(reply, snapshotPage(reply.body, after)));
    if (loaded === null) return;
    this.#onLoaded(loaded);
    if (loaded.offered > 0) this.#pusher.begin();
  }

  async #pull(): Promise<void> {
    const held = this.#phone.rowsAt;
    if (held === null) return;
    const { epoch, cursor } = held;
    const asked = `epoch=${encodeURIComponent(epoch)}&since=${cursor}&limit=${PULL_ROWS}`;
    const reply = await this.#transport({ path: `/api/pull?${asked}` });
    if (isAnotherLedger(reply.status, reply.body)) {
      this.#startAfresh(isLedger(reply.body, epoch) ? "went back" : "restored");
      return;
    }
    const answer = orNoAnswer(reply, pullAnswer(reply.body, cursor));
    // Another ledger that did not say so, or rows that are made by other rules now.
    if (answer.epoch !== epoch || answer.rules !== held.rules) {
      this.#startAfresh(answer.epoch === epoch ? "rules" : "restored");
      return;
    }
    const { rows, next, more } = answer;
    this.me = answer.me;
    for (const { type, id } of rows) this.came.add(rowKey(type, id));
    await takeRows(this.#phone, { since: cursor, next, rows, last: !more });
    if (more) return;
    if (this.#phone.rows.checksum === answer.checksum) this.#whole = true;
    else this.#startAfresh("differs");
  }

  /** Once in a round: what a fresh start does not heal must wait, or it would go on for ever. */
  #startAfresh(why: Why): void {
    if (this.#healed) throw new NoAnswer(DISAGREES);
    this.#healed = true;
    this.#fresh = why;
  }
}

const orNoAnswer = <T>(reply: Reply, form: T | null): T => {
  if (reply.status === 200 && form !== null) return form;
  throw noUse(reply);
};
