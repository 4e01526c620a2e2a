// Handing over: one tap records the drop, each container sent, and each empty taken along.

import type { Settings } from "../../../domain/figures.ts";
import type { DropLine } from "../../../domain/record-fields.ts";
import type { Brewery, Customer } from "../../../domain/records.ts";
import type { Standing } from "../../../domain/standing.ts";
import { dueOn } from "../../../domain/trips.ts";
import type { Draft } from "../../../store/saving.ts";
import { readNumbers } from "../../office/register/numbers.ts";
import { count, listWords } from "../../words.ts";
import { backDrafts } from "../back.ts";
import { depositPence } from "../deposits.ts";
import type { AtTheDoor } from "./at-the-door.ts";
import type { Stop } from "./drops.ts";

export interface Handing {
  stop: Stop;
  door: AtTheDoor;
  lines: readonly DropLine[];
  customer: Customer | undefined;
  brewery: Brewery | undefined;
  standings: ReadonlyMap<string, Standing>;
  /** How many of ours the customer has before it. */
  heldBefore: number;
  now: string;
  settings: Settings;
}

export const countedFault = (counted: string): string | null =>
  /^\d{0,3}$/.test(counted.trim()) ? null : "A whole figure, such as 3.";

export const othersFault = (others: string): string | null => {
  const { unread } = readNumbers(others);
  return unread.length === 0 ? null : `Not a number: ${listWords(unread)}.`;
};

/** Each once, whether it was tapped or typed. */
const emptiesOf = ({ empties, others }: AtTheDoor): string[] => [
  ...new Set([...empties, ...readNumbers(others).numbers]),
];

/** All empties that come along, told by number or only counted. */
export const takenAlong = (door: AtTheDoor): number =>
  emptiesOf(door).length + Number(door.counted || "0");

/** "2 containers handed over at Lantern, 1 taken along.": all that one Undo takes back. */
export const handedOverWords = (dropped: number, taken: number, name: string): string =>
  `${count(dropped, "container")} handed over at ${name}${taken > 0 ? `, ${taken} taken along` : ""}.`;

export const handOverDrafts = (handing: Handing): Draft[] => {
  const { stop, door, lines, customer, brewery, standings, heldBefore, now, settings } = handing;
  const deposits = (kinds: readonly (string | null)[]): number =>
    kinds.reduce((sum, kind) => sum + depositPence(kind, { customer, brewery }), 0);
  const counted = Number(door.counted || "0");
  const sent = lines.map(({ number }): Draft => {
    const facts = { customer: stop.customer, due_on: dueOn(now, customer ?? null, settings) };
    return { kind: "sent", subject: number, facts };
  });
  const empties = emptiesOf(door);
  const back = empties.flatMap((number) =>
    backDrafts(number, standings.get(number) ?? null, {
      place: undefined,
      asNew: null,
      ullage_ml: null,
    }),
  );
  const drop: Draft = {
    kind: "drop",
    subject: stop.id,
    facts: {
      handed_over_at: now,
      numbers: stop.numbers,
      lines,
      empties,
      empties_counted: counted,
      deposits_taken_pence: deposits(lines.map(({ kind }) => kind)),
      deposits_given_back_pence: deposits(
        empties.map((number) => standings.get(number)?.kind ?? null),
      ),
      held_before: heldBefore,
      held_after: Math.max(0, heldBefore + lines.length - empties.length - counted),
      taken_by: door.takenBy.trim(),
      signature: door.signature,
      note: door.note.trim(),
    },
  };
  return [...back, ...sent, drop];
};
