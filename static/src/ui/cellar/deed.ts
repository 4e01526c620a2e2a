// Recording one step of one container from a list. The same button tapped twice in a hurry, while
// the phone is still writing, is one step.

import type { Facts, Kind } from "../../domain/entries.ts";
import { book, type Saved } from "../../store/book.ts";
import { save } from "../parts/say.ts";

const underWay = new Set<string>();

/** Save unless the same container is being saved already. Answers whether it was saved. */
export const once = async (
  number: string,
  text: string,
  work: () => Promise<Saved | readonly Saved[]>,
): Promise<boolean> => {
  if (underWay.has(number)) return false;
  underWay.add(number);
  try {
    return await save(text, work);
  } finally {
    underWay.delete(number);
  }
};

export const deed = (number: string, text: string, kind: Kind, facts: Facts): Promise<boolean> =>
  once(number, text, () => book.record(kind, number, facts));

export const vent = (number: string, spile: "soft" | "hard"): Promise<boolean> =>
  deed(number, `${number}: ${spile} spile in.`, "vented", { spile });

export const tap = (number: string): Promise<boolean> =>
  deed(number, `${number} tapped: on sale.`, "tapped", {});

export const stillage = (number: string, place?: string): Promise<boolean> =>
  deed(number, `${number} is on the stillage.`, "stillaged", place === undefined ? {} : { place });

export const move = (number: string, place: { id: string; name: string }): Promise<boolean> =>
  deed(number, `${number} moved to ${place.name}.`, "moved", { place: place.id });
