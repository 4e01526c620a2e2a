// A small brewery for the tests of screens: standings folded by the real rules from entries in the
// order in which they are written down.

import type { Facts, Kind } from "../../../static/src/domain/entries.ts";
import { step } from "../../../static/src/domain/fold.ts";
import { blank, type Standing } from "../../../static/src/domain/standing.ts";
import type { Doc, Known } from "../../../static/src/ui/words/known.ts";

export const NOW = "2026-11-25T12:00:00.000Z";

/** An instant so many days and hours before now; negative for after. */
export const ago = (days: number, hours = 0): string =>
  new Date(Date.parse(NOW) - (days * 24 + hours) * 3_600_000).toISOString();

export type Told = readonly [at: string, kind: Kind, facts: Facts];

/** The standing of a container after what is told, each entry with the id "e1", "e2" and so on. */
export const container = (number: string, ...told: Told[]): Standing =>
  told.reduce(
    (standing, [at, kind, facts], n) =>
      step(standing, {
        id: `e${n + 1}`,
        device: "d",
        seq: n + 1,
        kind,
        subject: number,
        happened_at: at,
        effective_at: at,
        person: "Ann",
        facts,
        rules: 1,
        clock: "ok",
      }).standing,
    blank(number),
  );

export const FIRKIN: Told = [ago(400), "registered", { kind: "firkin", capacity_ml: 40915 }];
export const KEG: Told = [ago(400), "registered", { kind: "keg_30", capacity_ml: 30000 }];

/** Racked so many days ago, best before so many days after that. */
export const filled = (
  days: number,
  bestBefore: string | null,
  gyle = "g318",
  volume_ml = 40900,
): Told => [ago(days), "filled", { gyle, volume_ml, best_before: bestBefore }];

const doc = (fields: Doc["fields"], more: object = {}) => ({ fields, set_by: {}, ...more });

export const known = {
  now: NOW,
  beers: new Map([
    ["b1", doc({ name: "Oystercatcher", conditioning_days: 7, on_sale_days: 3 })],
    ["b2", doc({ name: "Marram Stout", conditioning_days: 14, on_sale_days: 3 })],
  ]),
  gyles: new Map([
    ["g318", doc({ number: "318", beer: "b1" }, { drawn_ml: 0 })],
    ["g319", doc({ number: "319", beer: "b2" }, { drawn_ml: 0 })],
  ]),
  places: new Map([["cold", doc({ name: "the cold room", role: "store" })]]),
  customers: new Map([
    ["c1", doc({ name: "Lantern", agreed_days: 42 }, { chase: null })],
    ["c2", doc({ name: "Sluice and Lamp", agreed_days: 14 }, { chase: null })],
  ]),
  lots: new Map([["l1", doc({ name: "IF2041", what: "isinglass" })]]),
} as unknown as Known;
