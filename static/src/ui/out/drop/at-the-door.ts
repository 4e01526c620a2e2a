// What is noted at a customer's door before it is handed over. Kept outside the components, and on
// the phone: a look elsewhere, or an empty battery, loses nothing of it.

import { book } from "../../../store/book.ts";

export interface AtTheDoor {
  /** Of those made up, the ones that stay on the van. */
  left: readonly string[];
  /** Of those down as the customer's, the ones taken along. */
  empties: readonly string[];
  /** Other empties, by number, as typed. */
  others: string;
  counted: string;
  takenBy: string;
  signature: string;
  note: string;
}

export const NOTHING: AtTheDoor = {
  left: [],
  empties: [],
  others: "",
  counted: "",
  takenBy: "",
  signature: "",
  note: "",
};

const kept = book.setting<{ readonly [stop: string]: AtTheDoor }>("out.atTheDoor", {});

export const atTheDoor = (stop: string): AtTheDoor => ({ ...NOTHING, ...kept.value[stop] });

export const putAtTheDoor = (stop: string, changed: Partial<AtTheDoor>): void => {
  kept.value = { ...kept.peek(), [stop]: { ...NOTHING, ...kept.peek()[stop], ...changed } };
};

export const clearAtTheDoor = (stop: string): void => {
  const { [stop]: _, ...others } = kept.peek();
  kept.value = others;
};
