// What is held, in words: the entry as far as it can be read, and why it was not taken in.

import type { MadeEntry } from "../../../domain/entries.ts";
import { isNumber } from "../../../domain/numbers.ts";
import { entryWords } from "../../words/entries.ts";
import type { Known } from "../../words.ts";
import type { DeviceNames, HeldAnswer } from "./answers.ts";

/** The entry that was sent; null where it cannot be read as one. */
export const heldEntry = ({ raw }: HeldAnswer): MadeEntry | null => {
  try {
    const entry: unknown = JSON.parse(raw);
    const { kind, subject, facts, happened_at, person } = entry as MadeEntry;
    const texts = [kind, subject, happened_at, person];
    const whole = texts.every((text) => typeof text === "string") && typeof facts === "object";
    return whole && facts !== null ? (entry as MadeEntry) : null;
  } catch {
    return null; // it is held for that very reason, and shown as it came
  }
};

export const heldTitle = (held: HeldAnswer, known: Known): string => {
  const entry = heldEntry(held);
  if (entry === null) return held.raw.slice(0, 80);
  const words = entryWords(entry, known);
  return isNumber(entry.subject) ? `${entry.subject}: ${words}` : words;
};

/** Whether an owner's word does away with the reason; any other is a fault of the entry or ours. */
export const canTake = ({ type }: HeldAnswer): boolean => /\/(revoked-device|rights)$/.test(type);

const WHY: { readonly [slug: string]: string } = {
  "revoked-device": "It comes from a phone that was out of use.",
  rights: "Who recorded it may not record this, or was not known on that phone.",
  "own-fault": "The server failed over it, and tries it again at its next start.",
  "unknown-kind": "It is of a kind that this release does not know, and waits for a later one.",
  "other-content": "Another entry of the same name is on record already.",
};

export const heldWhy = ({ type }: HeldAnswer): string =>
  WHY[type.split("/").at(-1) ?? ""] ?? "It was not taken in.";

export interface HeldGroup {
  device: string;
  name: string;
  all: HeldAnswer[];
}

/** Those of one phone together, in the order in which the phones' first ones came. */
export const byDevice = (held: readonly HeldAnswer[], names: DeviceNames): HeldGroup[] => {
  const groups = new Map<string, HeldGroup>();
  for (const one of held) {
    const { device } = one;
    const name = names.get(device) ?? "A phone that is not in the list";
    const group = groups.get(device) ?? { device, name, all: [] };
    group.all.push(one);
    groups.set(device, group);
  }
  return [...groups.values()];
};
