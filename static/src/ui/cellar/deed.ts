// Recording one step of one container from a list. The same button tapped twice in a hurry, while
// the phone is still writing, is one step.

import type { Facts, Kind } from "../../domain/entries.ts";
import { book, type Saved } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { save } from "../parts/say.ts";
import { timeWords } from "../words.ts";
import { earlyWords } from "./early.ts";

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

/** Tapped ahead of the sale that it was picked for, it is not on sale yet. */
export const tap = (number: string): Promise<boolean> => {
  const { now } = known.peek();
  const standing = book.containers.peek().get(number);
  const sale = standing?.planned?.sale_at;
  const what = sale !== undefined && sale > now ? ` for ${timeWords(sale, now)}` : ": on sale";
  const early = standing ? earlyWords(standing, known.peek(), ownFigures.peek()) : "";
  return deed(number, `${number} tapped${what}.${early}`, "tapped", {});
};

export const stillage = (number: string, place?: string): Promise<boolean> =>
  deed(number, `${number} is on the stillage.`, "stillaged", place === undefined ? {} : { place });

export const move = (number: string, place: { id: string; name: string }): Promise<boolean> =>
  deed(number, `${number} moved to ${place.name}.`, "moved", { place: place.id });
