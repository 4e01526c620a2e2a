// Who has the phone in hand changes by PIN: by the phone's own check where it has one, so with no
// network; by the brewery where it has none, or where the PIN may have been changed there.

import type { Signal } from "@preact/signals";
import type { PinCheck } from "../../store/account.ts";
import { pinFits, type WrongTries, waitMs } from "../../store/pin.ts";
import { Refused } from "../../sync/asking.ts";
import type { Shut } from "../../sync/door.ts";
import { NoAnswer } from "../../sync/transport.ts";

export type TriesOf = { readonly [name: string]: WrongTries };

/** What the phone and the brewery know and do. */
export interface Hands {
  checkOf(name: string): PinCheck | null;
  wrongTries: Signal<TriesOf>;
  person: Signal<string>;
  /** The brewery knows the PIN and makes them the phone's person; rejects where it does not. */
  here(name: string, pin: string): Promise<void>;
  /** It is told of one whom the phone knew by itself. */
  tellHere(name: string, pin: string): Promise<void>;
  nowMs(): number;
}

const NONE: WrongTries = { count: 0, lastMs: 0 };

/** "Wait 10 s", or null when a PIN of theirs may be tried. */
const waitWords = ({ wrongTries, nowMs }: Hands, name: string): string | null => {
  const seconds = Math.ceil(waitMs(wrongTries.peek()[name] ?? NONE, nowMs()) / 1000);
  if (seconds === 0) return null;
  const wait = seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
  return `So many wrong PINs: wait ${wait} before the next.`;
};

const noteWrong = ({ wrongTries, nowMs }: Hands, name: string): void => {
  const { count } = wrongTries.peek()[name] ?? NONE;
  wrongTries.value = { ...wrongTries.peek(), [name]: { count: count + 1, lastMs: nowMs() } };
};

const noteRight = ({ wrongTries }: Hands, name: string): void => {
  wrongTries.value = { ...wrongTries.peek(), [name]: NONE };
};

/** Null when they have the phone in hand now; otherwise why not, in words. */
export const handOver = async (hands: Hands, name: string, pin: string): Promise<string | null> => {
  const wait = waitWords(hands, name);
  if (wait !== null) return wait;
  const check = hands.checkOf(name);
  if (check === null || !(await pinFits(pin, check))) {
    return atTheBrewery(hands, name, pin, check !== null);
  }
  noteRight(hands, name);
  hands.person.value = name;
  // The brewery asks an owner's rights of whom it knows to be here. With no signal it hears of the next change.
  hands.tellHere(name, pin).catch(() => undefined);
  return null;
};

const atTheBrewery = async (
  hands: Hands,
  name: string,
  pin: string,
  checked: boolean,
): Promise<string | null> => {
  try {
    await hands.here(name, pin);
    noteRight(hands, name);
    return null;
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    const slug = fault instanceof Refused ? fault.slug : "";
    const cannotSay = fault instanceof NoAnswer || SHUT.includes(slug);
    if (cannotSay && !checked) {
      return `${name} has not used this phone before. The first time it takes a signal, and a phone that is signed in.`;
    }
    const wrong = cannotSay || slug === "wrong-pin";
    if (wrong) noteWrong(hands, name);
    return wrong ? "That is not the PIN." : fault.message;
  }
};

/** A phone that is not let in cannot ask either. */
const SHUT: readonly string[] = ["not-set-up", "not-paired", "revoked"] satisfies Shut[];
