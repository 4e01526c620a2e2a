/** What each kind of entry does to a standing (LIFE-1 to LIFE-19). Twin of cellarapp/domain/steps. */
import type { ContainerEntryKind, CorrectionKind } from "../entries.ts";
import * as bench from "./bench.ts";
import * as holding from "./holding.ts";
import * as serving from "./serving.ts";
import type { StepOf } from "./step.ts";
import * as trips from "./trips.ts";

export const STEPS: Readonly<Record<ContainerEntryKind | CorrectionKind, StepOf>> = {
  registered: bench.registered,
  washed: bench.washed,
  inspected: bench.inspected,
  filled: bench.filled,
  dosed: bench.dosed,
  moved: serving.moved,
  stillaged: serving.stillaged,
  vented: serving.vented,
  tapped: serving.tapped,
  stooped: serving.stooped,
  dipped: serving.dipped,
  checked: serving.checked,
  planned: serving.planned,
  emptied: serving.emptied,
  sent: trips.sent,
  returned: trips.returned,
  set_aside: holding.setAside,
  released: holding.released,
  missing: trips.missing,
  found: trips.found,
  scrapped: holding.scrapped,
  noted: holding.wordsOnly,
  reported: trips.reported,
  told: trips.told,
  forgotten: holding.wordsOnly,
  voided: holding.wordsOnly,
  renumbered: holding.wordsOnly,
  settled: holding.settled,
};

const NOT_HANDLED = new Set<string>([
  "registered",
  "planned",
  "missing",
  "scrapped",
  "noted",
  "reported",
  "told",
  "forgotten",
  "voided",
  "renumbered",
  "settled",
]);

/** Whether somebody has the container in hand, so that it cannot be missing. */
export function isHandled(kind: string): boolean {
  return Object.hasOwn(STEPS, kind) && !NOT_HANDLED.has(kind);
}
