// Phones of the real client, on storage in memory, asked line by line. What they ask the brewery is
// handed out, so that whoever is asked decides what becomes of it; answers come back the same way.

import { createInterface } from "node:readline";
import { openQueries } from "../../static/src/domain/queries.ts";
import type { Query } from "../../static/src/domain/standing.ts";
import { canonical } from "../../static/src/store/canonical.ts";
import type { Book } from "../../static/src/store/create-book.ts";
import type { Phone } from "../../static/src/store/phone.ts";
import type { Draft, Saved } from "../../static/src/store/saving.ts";
import { NotPossible, Trouble } from "../../static/src/store/trouble.ts";
import { Sync } from "../../static/src/sync/create-sync.ts";
import { NoAnswer, type Reply } from "../../static/src/sync/transport.ts";
import { aDevice, anOpenPage, type Device, openerOf } from "../front/store/a-phone.ts";
import { chanceFrom } from "../front/sync/chance.ts";
import { Fuse } from "../front/sync/crash.ts";

interface Page {
  phone: Phone;
  book: Book;
  sync: Sync;
  fuse: Fuse;
  /** A round with the brewery: at work, or waiting for an answer or for another tab. */
  round: "none" | "at work" | "waiting";
}

interface Handset {
  device: Device;
  /** The tabs that are open; none while the app is closed. */
  tabs: Page[];
  /** Which tab is at work with the brewery, and who waits for it: what Web Locks do. */
  queue: (() => void)[];
  busy: boolean;
  /** Whether there is no room left in its storage. */
  full: boolean;
}

interface Question {
  tab: Page;
  answer(reply: Reply | null): void;
}

/** What a command has led to, told with its answer. */
interface Told {
  questions: { id: number; phone: number; path: string; body?: string }[];
  /** Ids of entries that a person was told are saved. */
  saved: string[];
  /** Entries that were about to be saved, whether or not they were. */
  tried: number;
  /** Phones whose browser has died. */
  crashed: number[];
  trouble: string | null;
}

interface Command {
  do: string;
  phone: number;
  /** Crash at this many points from now; 0 for never. */
  crash_at?: number;
  [more: string]: unknown;
}

let handsets: Handset[] = [];
let nowMs = 0;
let questions = new Map<number, Question>();
let asked = 0;
let told: Told;

const nothing = (): Told => ({
  ...{ questions: [], saved: [], tried: 0, crashed: [], trouble: null },
});

const open = async (which: number): Promise<void> => {
  const handset = handsets[which] as Handset;
  const fuse = new Fuse(0);
  fuse.full = handset.full;
  const opener = openerOf(handset.device);
  const { phone, book } = await anOpenPage(handset.device, async (watching) =>
    fuse.wrap(await opener(watching)),
  );
  const tab = { phone, book, fuse, round: "none" } as Page;
  tab.sync = new Sync(phone, {
    ready: () => book.open(),
    transport: async ({ path, body }) => {
      await fuse.point();
      const reply = await waiting(
        tab,
        new Promise<Reply | null>((resolve) => {
          asked += 1;
          questions.set(asked, { tab, answer: resolve });
          const question = { id: asked, phone: which, path };
          told.questions.push(body === undefined ? question : { ...question, body });
        }),
      );
      await fuse.point();
      if (reply === null) throw new NoAnswer("no answer");
      return reply;
    },
    alone: (work) => inTurn(handset, tab, work),
    nowMs: () => handset.device.stopwatchMs,
    random: chanceFrom(which),
    app: "test",
  });
  handset.tabs.push(tab);
};

/** While this is waited for, the round does nothing by itself. */
const waiting = async <T>(tab: Page, what: Promise<T>): Promise<T> => {
  tab.round = "waiting";
  return what;
};

const inTurn = async <T>(handset: Handset, tab: Page, work: () => Promise<T>): Promise<T> => {
  if (handset.busy) {
    await waiting(
      tab,
      new Promise<void>((resolve) => {
        handset.queue.push(() => {
          tab.round = "at work";
          resolve();
        });
      }),
    );
  }
  handset.busy = true;
  try {
    return await work();
  } finally {
    handset.busy = false;
    handset.queue.shift()?.();
  }
};

/** The whole browser ends: all tabs with it, and what they waited for comes to nobody. */
const crash = (handset: Handset): void => {
  told.crashed.push(handsets.indexOf(handset));
  for (const { fuse } of handset.tabs) if (!fuse.burnt) fuse.crash();
  for (const [id, { tab }] of questions) if (handset.tabs.includes(tab)) questions.delete(id);
  const { device } = handset;
  device.tabs = [];
  device.stopwatchMs = 0;
  Object.assign(handset, { tabs: [], queue: [], busy: false });
};

/** Work that ends, or that the page dies in. */
const survivably = async (tab: Page, work: () => Promise<unknown>): Promise<void> => {
  await Promise.race([work(), tab.fuse.death]);
};

/** What the phones do by themselves comes to rest. Those that died left their work undone. */
const rest = async (): Promise<void> => {
  for (;;) {
    for (const handset of handsets) {
      if (handset.tabs.some(({ fuse }) => fuse.burnt)) crash(handset);
    }
    const tabs = handsets.flatMap((handset) => handset.tabs);
    if (!tabs.some(({ round, fuse }) => round === "at work" || fuse.storing)) return;
    for (const { fuse } of tabs) fuse.tick();
    await new Promise((resolve) => setImmediate(resolve));
  }
};

const save = async (tab: Page, work: (book: Book) => Promise<{ entry: { id: string } }[]>) => {
  try {
    const saved = await work(tab.book);
    told.saved.push(...saved.map(({ entry }) => entry.id));
  } catch (error) {
    if (error instanceof NotPossible) told.trouble = "not possible";
    else if (error instanceof Trouble) told.trouble = error.kind;
    else throw error;
  }
};

interface Waiting {
  number: string;
  query: Query;
}

/** The queries that wait for a person, as this phone sees it. */
const waitingIn = (book: Book): Waiting[] =>
  [...book.containers.value.values()].flatMap((standing) =>
    openQueries(standing).map((query) => ({ number: standing.number, query })),
  );

const settle = (book: Book, { number, query }: Waiting, pick: number): Promise<Saved> => {
  told.tried += 1;
  const ways = ["right", ...query.entries.map((entry) => `void:${entry}`)];
  return book.settle(number, query.id, ways[pick % ways.length] as string);
};

/** Something that a person puts right: an own entry undone or moved, or a query settled. */
const correct = async (book: Book, pick: number): Promise<{ entry: { id: string } }[]> => {
  const of = <T>(choices: readonly T[]): T => choices[pick % choices.length] as T;
  const open = waitingIn(book);
  if (open.length > 0 && pick % 2 === 0) return [await settle(book, of(open), pick)];
  const own = book.ownEntries.value.filter(
    ({ where, entry }) => where !== "attention" && book.containers.value.has(entry.subject),
  );
  if (own.length === 0) return [];
  const { entry } = of(own);
  told.tried += 1;
  const moves = pick % 3 === 0 && !["voided", "renumbered"].includes(entry.kind);
  return [moves ? await book.moveTo(entry.id, "9") : await book.undo(entry.id)];
};

const look = (tab: Page) => {
  const rows = [...tab.phone.rows.all].map(([key, { doc }]) => [key, canonical(doc)]);
  const own = [...tab.phone.own.all].map(({ where, kept }) => [kept.entry.id, where]);
  const { count, attention } = tab.book.waiting.value;
  const { device } = tab.book;
  return { rows: Object.fromEntries(rows), own, count, attention, device };
};

const DEEDS: { [name: string]: (command: Command) => Promise<unknown> } = {
  begin: async (command) => {
    nowMs = command["now_ms"] as number;
    questions = new Map();
    handsets = Array.from({ length: command["phones"] as number }, (_, which) => {
      const device = aDevice((command["seed"] as number) * 10 + which);
      device.nowMs = nowMs;
      return { device, tabs: [], queue: [], busy: false, full: false };
    });
    for (const which of handsets.keys()) await open(which);
  },
  open: ({ phone }) => open(phone),
  crash: async ({ phone }) => crash(handsets[phone] as Handset),
  save: async (command) => {
    const tab = tabOf(command);
    const drafts = command["drafts"] as Draft[];
    told.tried += drafts.length;
    await survivably(tab, () => save(tab, (book) => book.recordMany(drafts)));
  },
  correct: async (command) => {
    const tab = tabOf(command);
    await survivably(tab, () => save(tab, (book) => correct(book, command["pick"] as number)));
  },
  /** Begins a round, which goes on with each answer. */
  go: async (command) => {
    const tab = tabOf(command);
    if (tab.round !== "none") return;
    tab.round = "at work";
    void tab.sync.go("asked").then(() => {
      tab.round = "none";
    });
  },
  answer: async (command) => {
    const question = questions.get(command["question"] as number);
    questions.delete(command["question"] as number);
    if (question === undefined) return;
    question.tab.fuse.set(command.crash_at ?? 0);
    question.tab.round = "at work";
    question.answer(command["reply"] as Reply | null);
  },
  /** Time goes by for everybody; a phone in a pocket may stop its stopwatch. */
  wait: async (command) => {
    nowMs += command["ms"] as number;
    for (const { device } of handsets) {
      device.nowMs += command["ms"] as number;
      if (command["asleep"] !== true) device.stopwatchMs += command["ms"] as number;
    }
  },
  set_clock: async (command) => {
    (handsets[command.phone] as Handset).device.nowMs += command["ms"] as number;
  },
  fill_up: async (command) => {
    const handset = handsets[command.phone] as Handset;
    handset.full = command["full"] === true;
    for (const { fuse } of handset.tabs) fuse.full = handset.full;
  },
  /** What waits on one phone is carried to another one in a file. */
  carry: async (command) => {
    const file = await tabOf(command).book.exportOutbox();
    const other = tabOf({ ...command, phone: command["to"] as number });
    return (await other.book.importOutbox(file)).added;
  },
  /** Two people settle one query, neither knowing of the other. */
  settle_both: async (command) => {
    const one = tabOf(command);
    const other = tabOf({ ...command, phone: command["to"] as number });
    const pick = command["pick"] as number;
    const theirs = new Map(waitingIn(other.book).map((waiting) => [waiting.query.id, waiting]));
    const mine = waitingIn(one.book).find(({ query }) => theirs.has(query.id));
    if (mine === undefined) return [];
    await save(one, async (book) => [await settle(book, mine, pick)]);
    await save(other, async (book) => [
      await settle(book, theirs.get(mine.query.id) ?? mine, Math.floor(pick / 4)),
    ]);
    return told.saved;
  },
  look: async (command) => look(tabOf(command)),
};

const tabOf = (command: Command): Page => {
  const { tabs } = handsets[command.phone] as Handset;
  const tab = tabs[((command["tab"] as number | undefined) ?? 0) % tabs.length] as Page;
  tab.fuse.set(command.crash_at ?? 0);
  return tab;
};

for await (const line of createInterface({ input: process.stdin })) {
  const command = JSON.parse(line) as Command;
  told = nothing();
  try {
    const value = (await DEEDS[command.do]?.(command)) ?? null;
    await rest();
    process.stdout.write(`${JSON.stringify({ ...told, value })}\n`);
  } catch (error) {
    const fault = error instanceof Error ? error.stack : String(error);
    process.stdout.write(`${JSON.stringify({ fault })}\n`);
  }
}
