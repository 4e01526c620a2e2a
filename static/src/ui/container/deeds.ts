// Everything that can be noted of a container: what can be done at one tap, and what asks first.

import type { Facts, Kind } from "../../domain/entries.ts";
import { ASKED, type Asked } from "./asked.ts";

export interface Deed {
  label: string;
  kind: Kind;
  /** Said after "117 …" once it is saved. */
  done: string;
  facts: Facts;
  /** What has to be known first; none is recorded at one tap. */
  asks: readonly Asked[];
}

const deed = (
  label: string,
  kind: Kind,
  done: string,
  asks: readonly Asked[] = [],
  facts: Facts = {},
): Deed => ({ label, kind, done, facts, asks });

const { place, stillage, litresLeft, ullage, customer, why, needWhy, words } = ASKED;
const { temperature, clarity, taste, remarks, kind, capacity, tare, owner } = ASKED;
const { limit, bung, head, length } = ASKED;

export const DEEDS = {
  wash: deed("Washed", "washed", "washed"),
  pass: deed("Inspected, passed", "inspected", "inspected, passed", [], { passed: true }),
  fail: deed("Inspected, failed", "inspected", "failed inspection", [needWhy], { passed: false }),
  move: deed("Move", "moved", "moved", [place]),
  stillage: deed("Set on the stillage", "stillaged", "set on the stillage", [stillage]),
  soft: deed("Soft spile", "vented", "vented, soft spile", [], { spile: "soft" }),
  hard: deed("Hard spile", "vented", "vented, hard spile", [], { spile: "hard" }),
  tap: deed("Tap", "tapped", "tapped"),
  stoop: deed("Stoop", "stooped", "tilted"),
  dip: deed("Dip", "dipped", "dipped", [litresLeft]),
  check: deed("Check", "checked", "checked", [temperature, clarity, taste, remarks]),
  empty: deed("Emptied", "emptied", "emptied", [why]),
  send: deed("Send out", "sent", "sent out", [customer]),
  back: deed("Came back empty", "returned", "came back"),
  backFull: deed("Came back with beer in it", "returned", "came back", [ullage]),
  aside: deed("Set aside", "set_aside", "set aside", [needWhy]),
  release: deed("Back in use", "released", "back in use"),
  missing: deed("Missing", "missing", "down as missing", [why]),
  found: deed("Found", "found", "found", [place]),
  scrap: deed("Scrap", "scrapped", "scrapped", [needWhy]),
  note: deed("Note", "noted", "noted", [words]),
  enter: deed("What it is", "registered", "entered", [
    kind,
    capacity,
    tare,
    owner,
    limit,
    bung,
    head,
    length,
  ]),
} as const satisfies { [name: string]: Deed };

export type DeedName = keyof typeof DEEDS;
