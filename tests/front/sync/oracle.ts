// What a phone ought to show, worked out another way: everything that its rows can hold and its own
// entries, folded from nothing. The phone steps rows forward and lifts entries out; this does not.

import { type Entry, orderKey, unsent } from "../../../static/src/domain/entries.ts";
import { entriesBySubject, fold } from "../../../static/src/domain/fold.ts";
import { isNumber } from "../../../static/src/domain/numbers.ts";
import { blank, type Standing } from "../../../static/src/domain/standing.ts";
import { targetOf } from "../../../static/src/store/about.ts";
import type { Phone } from "../../../static/src/store/phone.ts";
import type { Brewery } from "./a-brewery.ts";

/** Container standings by number, where the phone can be expected to be exact. */
export const expectedStandings = (phone: Phone, brewery: Brewery): Map<string, Standing> => {
  const expected = new Map<string, Standing>();
  if (phone.rowsAt?.epoch !== brewery.epoch) return expected;
  const own = [...phone.own.all]
    .filter(({ where }) => where !== "attention")
    .map(({ kept }) => unsent(kept.entry));
  for (const number of phone.views.containers.signal.peek().keys()) {
    if (!isNumber(number) || phone.views.corrections.peek().has(`container:${number}`)) continue;
    const row = phone.rows.get(`container:${number}`);
    const held = Math.max(row?.position ?? 0, phone.rowsAt.whole);
    const inRow = [...brewery.taken.values()].filter(({ position }) => position <= held);
    const ids = new Set(inRow.map(({ entry }) => entry.id));
    const more = own.filter(({ id }) => !ids.has(id));
    const last = (row?.doc as Standing | undefined)?.last ?? "";
    // Between what the row has seen, a phone guesses: the brewery puts that right.
    if (more.some((entry) => orderKey(entry) <= last)) continue;
    // An undo shows what the phone took to be there before: what others had noted by then and it
    // did not know is missing from that until the brewery has worked it out.
    const undoes = more.some((entry) => ids.has(targetOf(entry) ?? ""));
    if (undoes && inRow.some(({ entry }) => entry.device !== phone.device)) continue;
    const all: Entry[] = [...inRow.map(({ entry }) => entry), ...more];
    const counting = entriesBySubject(all).get(number);
    expected.set(number, counting === undefined ? blank(number) : fold(number, counting));
  }
  return expected;
};
