// An update waits to be asked for, and no tab is loaded anew under an entry that is being made.

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { signal } from "@preact/signals";
import { updateReady, useUpdate, watchUpdates } from "../../../static/src/sw/update.ts";
import { USE_NOW } from "../../../static/src/sw/use-now.ts";

/** What a browser offers to a page, as far as an update needs it. */
class Browser {
  reloads = 0;
  looks = 0;
  readonly told: unknown[] = [];
  readonly page = Object.assign(new EventTarget(), { visibilityState: "visible" });
  readonly registration = Object.assign(new EventTarget(), {
    waiting: null as object | null,
    installing: null as (EventTarget & { state: string }) | null,
    update: async () => {
      this.looks += 1;
    },
  });
  readonly workers = Object.assign(new EventTarget(), {
    controller: null as object | null,
    register: async () => this.registration,
  });

  constructor(controlled: boolean) {
    if (controlled) this.workers.controller = {};
    const give = (name: string, value: unknown) =>
      Object.defineProperty(globalThis, name, { value, configurable: true });
    give("navigator", { serviceWorker: this.workers });
    give("document", this.page);
    give("location", { reload: () => (this.reloads += 1) });
    give("setInterval", () => 0);
  }

  /** A new version comes and is installed beside the one in use. */
  install(): void {
    const worker = Object.assign(new EventTarget(), {
      state: "installing",
      postMessage: (word: unknown) => this.told.push(word),
    });
    this.registration.installing = worker;
    this.registration.dispatchEvent(new Event("updatefound"));
    worker.state = "installed";
    worker.dispatchEvent(new Event("statechange"));
  }

  /** The worker that is asked for takes over in every tab. */
  takeOver(): void {
    this.workers.controller = {};
    this.workers.dispatchEvent(new Event("controllerchange"));
  }
}

beforeEach(() => {
  updateReady.value = false;
});

test("the very first version is not offered, and does not load the page anew", async () => {
  const browser = new Browser(false);
  await watchUpdates(signal(false));
  browser.install();
  browser.takeOver();
  assert.equal(updateReady.value, false);
  assert.equal(browser.reloads, 0);
});

test("a new version waits until a person wants it", async () => {
  const browser = new Browser(true);
  await watchUpdates(signal(false));
  browser.install();
  assert.equal(updateReady.value, true);
  assert.deepEqual(browser.told, []);
  useUpdate();
  assert.deepEqual(browser.told, [USE_NOW]);
  assert.equal(browser.reloads, 0, "not before it has taken over");
  browser.takeOver();
  assert.equal(updateReady.value, false);
  assert.equal(browser.reloads, 1);
});

test("one that has waited since an earlier start is offered at once", async () => {
  const browser = new Browser(true);
  browser.registration.waiting = {};
  await watchUpdates(signal(false));
  assert.equal(updateReady.value, true);
});

test("a tab with an entry half made is loaded anew when it is made, and once", async () => {
  const browser = new Browser(true);
  const halfMade = signal(true);
  await watchUpdates(halfMade);
  browser.install();
  browser.takeOver();
  assert.equal(browser.reloads, 0);
  halfMade.value = false;
  assert.equal(browser.reloads, 1);
  halfMade.value = true;
  halfMade.value = false;
  assert.equal(browser.reloads, 1);
});

test("whenever the app is looked at, it looks for a new version", async () => {
  const browser = new Browser(true);
  await watchUpdates(signal(false));
  browser.page.dispatchEvent(new Event("visibilitychange"));
  assert.equal(browser.looks, 1);
  browser.page.visibilityState = "hidden";
  browser.page.dispatchEvent(new Event("visibilitychange"));
  assert.equal(browser.looks, 1);
});

test("a browser without workers is left in peace", async () => {
  new Browser(true);
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  await watchUpdates(signal(false));
});
