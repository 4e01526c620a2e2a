// Who has the phone in hand changes by PIN: by the phone's own check where it has one, so with no
// network; by the brewery where it has none, or where the PIN may have been changed there.

import { book } from "../../store/book.ts";
import { pinFits, type WrongTries, waitMs } from "../../store/pin.ts";
import { here, tellHere } from "../../sync/account.ts";
import { NoAnswer } from "../../sync/transport.ts";
import { person } from "../mine.ts";
import { faultWords } from "../parts/say.ts";

type TriesOf = { readonly [name: string]: WrongTries };

const wrongTries = book.setting<TriesOf>("wrong_pins", {});

const NONE: WrongTries = { count: 0, lastMs: 0 };

const triesOf = (name: string): WrongTries => wrongTries.peek()[name] ?? NONE;

const noteTry = (name: string, fits: boolean): void => {
  const tried = fits ? NONE : { count: triesOf(name).count + 1, lastMs: Date.now() };
  wrongTries.value = { ...wrongTries.peek(), [name]: tried };
};

/** "Wait 10 s", or null when a PIN of theirs may be tried. */
export const waitWords = (name: string): string | null => {
  const seconds = Math.ceil(waitMs(triesOf(name), Date.now()) / 1000);
  if (seconds === 0) return null;
  const wait = seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
  return `So many wrong PINs: wait ${wait} before the next.`;
};

/** Null when they have the phone in hand now; otherwise why not, in words. */
export const switchTo = async (name: string, pin: string): Promise<string | null> => {
  const wait = waitWords(name);
  if (wait !== null) return wait;
  const one = book.account.peek().me?.people.find((other) => other.name === name);
  const check = one?.pin_check ?? null;
  const fits = check !== null && (await pinFits(pin, check));
  if (fits) {
    noteTry(name, true);
    person.value = name;
    // For the brewery, which asks an owner's rights of whom it knows to be here.
    tellHere(name, pin).catch(() => undefined); // with no signal it is told the next time
    return null;
  }
  return atTheBrewery(name, pin, check !== null);
};

const atTheBrewery = async (
  name: string,
  pin: string,
  checked: boolean,
): Promise<string | null> => {
  try {
    await here(name, pin);
    noteTry(name, true);
    return null;
  } catch (fault) {
    if (!(fault instanceof NoAnswer)) {
      noteTry(name, false);
      return faultWords(fault);
    }
    if (!checked) {
      return `${name} has not used this phone before. The first time it takes a signal.`;
    }
    noteTry(name, false);
    return "That is not the PIN.";
  }
};
