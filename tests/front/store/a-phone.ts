// A phone for tests: the real store on an IndexedDB in memory, with a clock that is set by hand.

import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import type { Opener } from "../../../static/src/store/connection.ts";
import { Book } from "../../../static/src/store/create-book.ts";
import { openCellar } from "../../../static/src/store/open.ts";
import { Phone } from "../../../static/src/store/phone.ts";
import type { News, Tabs } from "../../../static/src/store/tabs.ts";

/** The storage and the surroundings of one phone, which outlive a page. */
export interface Device {
  nowMs: number;
  stopwatchMs: number;
  storage: IDBFactory;
  /** The tabs that are open, each hearing what the others tell. */
  tabs: ((news: News) => void)[];
  random(bytes: Uint8Array<ArrayBuffer>): void;
}

export const START_MS = Date.parse("2026-03-02T09:00:00.000Z");

export const aDevice = (seed = 1): Device => {
  let state = seed;
  return {
    nowMs: START_MS,
    stopwatchMs: 0,
    storage: new IDBFactory(),
    tabs: [],
    random: (bytes) => {
      for (let at = 0; at < bytes.length; at += 1) {
        state = (state * 1103515245 + 12345) % 2 ** 31;
        bytes[at] = state >>> 16;
      }
    },
  };
};

const tabOf = (device: Device): Tabs => {
  let mine: ((news: News) => void) | undefined;
  return {
    tell: (news) => {
      for (const hear of device.tabs) if (hear !== mine) hear(structuredClone(news));
    },
    onNews: (hear) => {
      mine = hear;
      device.tabs.push(hear);
    },
  };
};

/** The database is opened in whichever device's storage is asked for. */
export const openerOf =
  (device: Device, patienceMs = 5000): Opener =>
  (watching) => {
    globalThis.indexedDB = device.storage;
    return openCellar(watching, patienceMs);
  };

export interface Page {
  phone: Phone;
  book: Book;
}

/** A page of the app on this device, not opened yet. */
export const aPage = (device: Device, open: Opener = openerOf(device)): Page => {
  const phone = new Phone({
    open,
    nowMs: () => device.nowMs,
    stopwatchMs: () => device.stopwatchMs,
    random: device.random,
    tabs: tabOf(device),
  });
  return { phone, book: new Book(phone) };
};

export const anOpenPage = async (device: Device, open?: Opener): Promise<Page> => {
  const page = aPage(device, open);
  await page.book.open();
  return page;
};

/** Facts of a firkin that joins the brewery's own. */
export const FIRKIN = { kind: "firkin", capacity_ml: 40915 };

export const fillFrom = (gyle: string, volume_ml = 40915) => ({
  gyle,
  volume_ml,
  best_before: "2026-03-30",
});
