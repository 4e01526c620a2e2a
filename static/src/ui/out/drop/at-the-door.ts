// What is noted at a customer's door before it is handed over. Kept outside the components, and on
// the phone: a look elsewhere, or an empty battery, loses nothing of it.

import { book } from "../../../store/book.ts";

export interface AtTheDoor {
  /** Of those made up, the ones that stay on the van. */
  left: readonly string[];
  empties: readonly string[];
  counted: string;
  takenBy: string;
  signature: string;
  note: string;
}

export const NOTHING: AtTheDoor = {
  left: [],
  empties: [],
  counted: "",
  takenBy: "",
  signature: "",
  note: "",
};

const kept = book.setting<{ readonly [stop: string]: AtTheDoor }>("out.atTheDoor", {});

export const atTheDoor = (stop: string): AtTheDoor => kept.value[stop] ?? NOTHING;

export const putAtTheDoor = (stop: string, changed: Partial<AtTheDoor>): void => {
  kept.value = { ...kept.peek(), [stop]: { ...(kept.peek()[stop] ?? NOTHING), ...changed } };
};

export const clearAtTheDoor = (stop: string): void => {
  const { [stop]: _, ...others } = kept.peek();
  kept.value = others;
};
