// What one tab tells the others of the same phone: which of the shared records have changed.

import type { RowKey } from "./kept.ts";

export type News =
  /** Own entries under these keys were made, sent or moved. */
  | { about: "own"; keys: number[] }
  /** These rows changed, or all of them; `revision` counts the changes. */
  | { about: "rows"; keys: RowKey[] | null; revision: number }
  | { about: "setting"; name: string };

export interface Tabs {
  tell(news: News): void;
  onNews(hear: (news: News) => void): void;
}

/** For a browser without BroadcastChannel: each tab then finds out when it is looked at. */
export const NO_OTHER_TABS: Tabs = { tell: () => undefined, onNews: () => undefined };

export const tabsOverChannel = (name: string): Tabs => {
  if (typeof BroadcastChannel === "undefined") return NO_OTHER_TABS;
  const channel = new BroadcastChannel(name);
  return {
    // Whoever waits for the save hears first: posting takes nearly as long as saving.
    tell: (news) => void setTimeout(() => channel.postMessage(news)),
    onNews: (hear) =>
      channel.addEventListener("message", (event: MessageEvent<News>) => hear(event.data)),
  };
};
