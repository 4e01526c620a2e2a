/** LIFE-20: the missing step that an entry implies. Twin of cellarapp/domain/inference.py. */
import type { Entry } from "./entries.ts";
import { lapse, WHEREABOUTS } from "./queries.ts";
import { type Mark, mark, type Serving, type Standing, type Vent } from "./standing.ts";

/** The place of a container that is in the brewery, nobody noted where. */
export const AT_THE_BREWERY = "brewery";

/** No beer in it any more: serving ends, it is dirty, and what hung on the beer lapses. */
export function endOfBeer(standing: Standing, entry: Entry, inferred: boolean): void {
  standing.contents = null;
  standing.serving = null;
  standing.planned = null;
  standing.clean = { ...mark(entry, inferred), state: "dirty" };
  lapse(standing);
}

/** A container that somebody handles is not missing; where it is, nobody has to ask (LIFE-27). */
export function beInHand(standing: Standing): string[] {
  lapse(standing, WHEREABOUTS);
  return beFound(standing);
}

/** A container that is somewhere is not missing. */
export function beFound(standing: Standing): string[] {
  if (standing.held?.state !== "missing") return [];
  standing.held = null;
  return ["found"];
}

/** A container handled at the brewery has come back from its customer. */
export function beBack(standing: Standing, entry: Entry, withItsBeer = false): string[] {
  if (standing.trip === null) return [];
  standing.trip = null;
  standing.returned = mark(entry, true);
  standing.place = { ...mark(entry, true), at: AT_THE_BREWERY, with_customer: false };
  if (!withItsBeer) endOfBeer(standing, entry, true);
  return ["returned"];
}

/** A container that is washed or filled has been emptied. */
export function beEmptied(standing: Standing, entry: Entry): string[] {
  if (standing.contents === null) return [];
  endOfBeer(standing, entry, true);
  return ["emptied"];
}

/** Serving begins: on the stillage, and no more than that. */
export function onStillage(stillaged: Mark): Serving {
  return { stillaged, vented: null, tapped: null, stooped: null };
}

/** A container that is vented or tapped lies on the stillage. */
export function beStillaged(standing: Standing, entry: Entry): [Serving, string[]] {
  if (standing.serving?.stillaged) return [standing.serving, []];
  return [onStillage(mark(entry, true)), ["stillaged"]];
}

/** A container that is tapped has been vented; with which spile nobody said. */
export function beVented(serving: Serving, entry: Entry): [Serving, string[]] {
  if (serving.vented) return [serving, []];
  const vented: Vent = { ...mark(entry, true), spile: null, first_at: entry.effective_at };
  return [{ ...serving, vented }, ["vented"]];
}
