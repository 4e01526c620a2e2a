// The engine: rounds with the brewery, one at a time over all tabs, at the pace that is right.
// It knows neither page nor worker: what they offer is passed in.

import { type ReadonlySignal, signal } from "@preact/signals";
import { accountOf, type RoleChange, setDoor, takeMe } from "../store/account.ts";
import { forgetOldSent } from "../store/answers.ts";
import { catchUp } from "../store/catch-up.ts";
import { JITTER_MS } from "../store/clock.ts";
import type { Loaded } from "../store/first-load.ts";
import type { RowKey } from "../store/kept.ts";
import type { Phone } from "../store/phone.ts";
import { keepSyncedAt } from "../store/synced-at.ts";
import { ask } from "./asking.ts";
import { ShutOut, throughTheDoor } from "./door.ts";
import { meAnswer } from "./forms.ts";
import { type Occasion, Pace } from "./pace.ts";
import { Pusher } from "./push.ts";
import { Round } from "./round.ts";
import { NO_SENSE, NoAnswer, type Transport } from "./transport.ts";

export interface SyncState {
  /** Whether the brewery answered the last time. */
  online: boolean;
  busy: boolean;
  /** When this phone last knew all that the brewery knew. */
  lastSyncAt: string | null;
  /** What is wrong, in words for people. */
  message: string | null;
}

const HOUR_MS = 3_600_000;

export interface SyncSurroundings {
  /** Resolves when the phone's storage has been read. */
  ready(): Promise<void>;
  transport: Transport;
  /** Runs one piece of work at a time over all tabs. */
  alone<T>(work: () => Promise<T>): Promise<T>;
  nowMs(): number;
  random(): number;
  /** Names the build, for the brewery's log. */
  app: string;
}

export class Sync {
  readonly #state = signal<SyncState>({
    online: false,
    busy: false,
    lastSyncAt: null,
    message: null,
  });
  readonly state: ReadonlySignal<SyncState> = this.#state;
  /** Something to be told once, such as a restored ledger; a screen sets it to null when read. */
  readonly notice = signal<string | null>(null);
  readonly pace: Pace;
  readonly #phone: Phone;
  readonly #around: SyncSurroundings;
  readonly #transport: Transport;
  #running: Promise<void> | null = null;
  #again = false;
  #clockTold = false;
  #askedMs = Number.NEGATIVE_INFINITY;

  constructor(phone: Phone, around: SyncSurroundings) {
    this.#phone = phone;
    this.#around = around;
    this.#transport = throughTheDoor(around.transport);
    this.pace = new Pace(around.random);
  }

  /** Go now if the occasion is good enough. Resolves when the phone has done what it can. */
  async go(occasion: Occasion): Promise<void> {
    if (!this.pace.may(occasion, this.#around.nowMs())) return;
    if (occasion === "asked") this.#askedMs = Number.NEGATIVE_INFINITY;
    // What came up meanwhile may have missed the round that is under way.
    if (this.#running !== null) this.#again = true;
    this.#running ??= this.#goOn();
    await this.#running;
  }

  async #goOn(): Promise<void> {
    this.#set({ busy: true });
    do {
      this.#again = false;
      await this.#try();
    } while (this.#again && this.pace.failures === 0);
    // Before anybody hears that it rests: who then wants to go begins a new run.
    this.#running = null;
    this.#set({ busy: false });
  }

  /** A round, or the reason why there was none: whatever happens, it rests and tries again. */
  async #try(): Promise<void> {
    const { alone, nowMs } = this.#around;
    try {
      const later = await alone(() => this.#round());
      this.pace.succeeded(nowMs());
      this.#set({ online: true, message: later > 0 ? laterWords(later) : null });
    } catch (error) {
      const silent = error instanceof NoAnswer;
      this.pace.failed(nowMs(), silent ? error.retryAfterMs : null);
      const message = error instanceof Error ? error.message : String(error);
      if (error instanceof ShutOut) setDoor(this.#phone, error.door);
      const answered =
        error instanceof ShutOut ? { online: true } : silent ? { online: false } : {};
      this.#set({ ...answered, message });
    }
    this.#set({ lastSyncAt: this.#phone.syncedAt });
  }

  /** Answers how many entries the brewery could not judge now. */
  async #round(): Promise<number> {
    const { app, ready } = this.#around;
    await ready();
    await catchUp(this.#phone);
    const pusher = new Pusher(this.#phone, this.#transport, app);
    const round = new Round(this.#phone, this.#transport, pusher, (loaded) => {
      this.notice.value = loadedWords(loaded) ?? this.notice.value;
    });
    // First, for a phone that was taken out of use gets no further than sending.
    await this.#askAboutHeld(pusher);
    await round.run();
    if (this.#heldMayBeIn(round.came)) await pusher.askAboutHeld();
    await keepSyncedAt(this.#phone);
    await forgetOldSent(this.#phone);
    this.#tellOfClock();
    await this.#askWho(round.me);
    return pusher.later;
  }

  /** Whether a row came that an entry would have changed which the brewery holds. */
  #heldMayBeIn(came: ReadonlySet<RowKey>): boolean {
    const { own } = this.#phone;
    return own.held().some(({ kept }) => [...own.touches(kept.entry)].some((key) => came.has(key)));
  }

  /** When the app is opened, when a person wants it, and hourly: an answer changes only when a person or a release does. */
  async #askAboutHeld(pusher: Pusher): Promise<void> {
    const nowMs = this.#around.nowMs();
    if (nowMs - this.#askedMs < HOUR_MS) return;
    await pusher.askAboutHeld();
    this.#askedMs = nowMs;
  }

  /** Let in; and where the brewery says that something has changed about people, ask what. */
  async #askWho(version: number | null): Promise<void> {
    setDoor(this.#phone, "in");
    if (version === null || version === accountOf(this.#phone).peek().me?.version) return;
    const me = meAnswer(await ask(this.#transport, "/api/me"));
    if (me === null) throw new NoAnswer(NO_SENSE);
    const change = takeMe(this.#phone, me);
    if (change !== null) this.notice.value = roleWords(change);
  }

  /** Once each time the app is opened, so that somebody may put the clock right. */
  #tellOfClock(): void {
    const { sure, offsetMs } = this.#phone.clock;
    if (this.#clockTold || !sure || Math.abs(offsetMs) <= JITTER_MS) return;
    this.#clockTold = true;
    this.notice.value ??= clockWords(offsetMs);
  }

  #set(changes: Partial<SyncState>): void {
    this.#state.value = { ...this.#state.peek(), ...changes };
  }
}

const MAY: { readonly [role in RoleChange["role"]]: string } = {
  owner: "an owner, who may do everything",
  cellar: "of the cellar, who records everything of beer and containers",
  driver: "a driver, who records what goes out, comes back and is moved",
  reader: "somebody who looks and records nothing",
};

const roleWords = ({ person, role }: RoleChange): string =>
  `${person} is now ${MAY[role]}. ` +
  "What waits here still goes; what that does not allow is held for the owner.";

/** What a load after the first is told by; null where it concerns nobody. */
const loadedWords = ({ why, offered, differing }: Loaded): string | null => {
  if (why === "differs") return differingWords(differing);
  return offered > 0 ? restoredWords(offered) : null;
};

const UNITS: readonly (readonly [ms: number, word: string])[] = [
  [365 * 24 * HOUR_MS, "year"],
  [24 * HOUR_MS, "day"],
  [HOUR_MS, "hour"],
  [HOUR_MS / 60, "minute"],
];

const clockWords = (slowMs: number): string => {
  const offMs = Math.abs(slowMs);
  const [ms, word] = UNITS.find(([unitMs]) => offMs >= 0.95 * unitMs) ?? [HOUR_MS / 60, "minute"];
  const count = Math.round(offMs / ms);
  const much = count === 1 ? `one ${word}` : `${count} ${word}s`;
  return (
    `This phone's clock is ${much} ${slowMs > 0 ? "slow" : "fast"}. ` +
    "What is recorded gets the right time all the same when it is sent; set the clock right."
  );
};

const NAMED = 5;

const differingWords = (keys: readonly RowKey[]): string => {
  const names = keys.slice(0, NAMED).map((key) => key.replace(/^container:/, "").replace(":", " "));
  const more = keys.length - names.length;
  const what =
    names.length === 0 ? "" : `: ${names.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
  return (
    `What this phone knew was not what the brewery has${what}. ` +
    "It was fetched again, and what was recorded here was sent again; nothing is lost."
  );
};

const restoredWords = (count: number): string => {
  const what =
    count === 1 ? "One entry that this phone sent" : `${count} entries that this phone sent`;
  const again =
    count === 1
      ? "is sent again, in case the copy lacks it."
      : "are sent again, in case the copy lacks them.";
  return `The brewery's records were restored from a copy. ${what} in the last 30 days ${again}`;
};

const laterWords = (count: number): string =>
  `The brewery could not take ${count === 1 ? "one entry" : `${count} entries`} yet. ` +
  "They stay on this phone and are sent again.";
