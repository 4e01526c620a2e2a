// Telling the brewery something that only an owner may, and asking what only an owner may know.
// Where it wants the passphrase first, what was asked waits and goes on once that is given.

import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { askBrewery } from "../../../sync/account.ts";
import { Refused } from "../../../sync/asking.ts";
import { faultWords } from "../../parts/say.ts";

type Told = { [name: string]: unknown };

/** Goes on with what waits for the owner's passphrase; null while nothing does. */
export const waitsForPassphrase = signal<(() => void) | null>(null);

/** Resolves when it is done, after the passphrase if need be; rejects with words for people. */
export const tell = async (path: string, told?: Told): Promise<unknown> => {
  try {
    return await askBrewery(path, told);
  } catch (fault) {
    if (!(fault instanceof Refused) || fault.slug !== "step-up-needed") throw fault;
    await new Promise<void>((resolve, reject) => {
      waitsForPassphrase.value = resolve;
      leave = () => reject(new Error("Nothing was changed: the passphrase was not given."));
    });
    return tell(path, told);
  }
};

let leave: () => void = () => undefined;

/** The passphrase is not given after all. */
export const giveUp = (): void => {
  waitsForPassphrase.value = null;
  leave();
};

export interface Answered<T> {
  answer: T | null;
  /** Why there is none, in words. */
  fault: string | null;
  again: () => void;
}

/** Asked when the screen is opened, and again when something was changed. */
export const useAnswer = <T>(path: string): Answered<T> => {
  const [turn, setTurn] = useState(0);
  const [found, setFound] = useState<{ answer: T | null; fault: string | null }>({
    answer: null,
    fault: null,
  });
  useEffect(() => {
    let left = false;
    tell(path).then(
      (answer) => {
        if (!left) setFound({ answer: answer as T, fault: null });
      },
      (fault: unknown) => {
        if (!left) setFound({ answer: null, fault: faultWords(fault) });
      },
    );
    return () => {
      left = true;
    };
  }, [path, turn]);
  return { ...found, again: () => setTurn((before) => before + 1) };
};
