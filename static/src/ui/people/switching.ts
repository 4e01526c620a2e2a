// Handing this phone over.

import { book } from "../../store/book.ts";
import { here, tellHere } from "../../sync/account.ts";
import { person } from "../mine.ts";
import { type Hands, handOver, type TriesOf } from "./hand-over.ts";

const hands: Hands = {
  checkOf: (name) => {
    const people = book.account.peek().me?.people ?? [];
    return people.find((one) => one.name === name)?.pin_check ?? null;
  },
  wrongTries: book.setting<TriesOf>("wrong_pins", {}),
  person,
  here,
  tellHere,
  nowMs: () => Date.now(),
};

/** Null when they have the phone in hand now; otherwise why not, in words. */
export const switchTo = (name: string, pin: string): Promise<string | null> =>
  handOver(hands, name, pin);
