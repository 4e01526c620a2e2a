// What wakes the engine in a page.

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { NoAnswer } from "../../../static/src/sync/transport.ts";
import { wake } from "../../../static/src/sync/wake.ts";
import { type SimPhone, World } from "./a-world.ts";

/** The events of a page, and one timer that is rung by hand. */
class Surroundings {
  readonly window = new EventTarget();
  readonly document = Object.assign(new EventTarget(), { visibilityState: "visible" });
  ring: () => void = () => undefined;
  waitMs = 0;
  #rested: () => void = () => undefined;

  constructor() {
    const give = (name: string, value: unknown) =>
      Object.defineProperty(globalThis, name, { value, configurable: true });
    give("addEventListener", this.window.addEventListener.bind(this.window));
    give("document", this.document);
  }

  /** Resolves when the engine has done what this set off, and has set its timer. */
  after(setOff: () => void): Promise<void> {
    const rested = new Promise<void>((resolve) => {
      this.#rested = resolve;
    });
    setOff();
    return rested;
  }

  readonly timer = {
    set: (ring: () => void, waitMs: number) => {
      this.ring = ring;
      this.waitMs = waitMs;
      this.#rested();
    },
  };
}

let around: Surroundings;
let world: World;
let phone: SimPhone;

beforeEach(async () => {
  around = new Surroundings();
  world = await World.make(1, 1);
  phone = world.phone(0);
});

const start = (): Promise<void> =>
  around.after(() => wake(phone.sync, phone.book, around.timer, () => world.nowMs));

test("it goes at once, and sets itself a time for the next round", async () => {
  await start();
  assert.equal(around.waitMs, 30_000);
  assert.equal(phone.sync.state.value.online, true);
});

test("a save sends it, without waiting for the timer", async () => {
  await start();
  await around.after(() => void phone.book.record("noted", "117", { words: "x" }));
  assert.equal(phone.book.waiting.value.count, 0);
});

test("a sign of a network, or a look at the app, sends it too", async () => {
  await start();
  for (const [target, name] of [
    [around.window, "online"],
    [around.window, "pageshow"],
    [around.document, "visibilitychange"],
  ] as const) {
    phone.asked = 0;
    await around.after(() => target.dispatchEvent(new Event(name)));
    assert.equal(phone.asked, 1, name);
  }
});

test("out of sight it goes only for what is unsent", async () => {
  await start();
  around.document.visibilityState = "hidden";
  world.wait(60_000);
  phone.asked = 0;
  around.ring();
  assert.equal(phone.sync.state.value.busy, false);
  world.network = () => async () => Promise.reject(new NoAnswer("down"));
  await around.after(() => void phone.book.record("noted", "117", { words: "x" }));
  assert.equal(phone.book.waiting.value.count, 1);
  world.network = (ask) => ask;
  world.wait(around.waitMs);
  await around.after(() => around.ring());
  assert.equal(phone.book.waiting.value.count, 0);
});
