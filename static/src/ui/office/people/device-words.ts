// A phone of the list in words.

import { ageWords, count, fullTimeWords, listWords } from "../../words.ts";
import type { DeviceAnswer } from "./answers.ts";

const agoWords = (time: string, now: string): string => {
  const age = ageWords(time, now);
  return age === "just now" ? age : `${age} ago`;
};

/** What the phone said the last time that it was heard. */
export const waitingWords = (one: DeviceAnswer, now: string): string => {
  const { waiting, oldest_waiting_at: oldest } = one;
  if (waiting === 0) return "nothing waited on it when it was last seen";
  const since = oldest === null ? "" : `, the oldest since ${fullTimeWords(oldest, now)}`;
  return `${count(waiting, "entry", "entries")} waited on it when it was last seen${since}`;
};

/** "Ann and Bob, seen 3 min ago" */
export const deviceWords = (one: DeviceAnswer, now: string): string => {
  const parts = [
    one.people.length === 0 ? "nobody yet" : listWords(one.people),
    `seen ${agoWords(one.last_seen_at, now)}`,
    one.waiting === 0 ? "" : `${count(one.waiting, "entry waits", "entries wait")}`,
    one.revoked_at === null ? "" : `out of use since ${fullTimeWords(one.revoked_at, now)}`,
  ];
  return parts.filter(Boolean).join(", ");
};
