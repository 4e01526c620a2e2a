// The three jobs of the bench, which share one pad: filling, washing, inspecting.

import { CONTAINER_KINDS, mostThatFitsMl } from "../../domain/containers.ts";
import type { Facts, Kind } from "../../domain/entries.ts";
import { bestBeforeOn } from "../../domain/readiness.ts";
import type { Standing } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { beerDoc, kindWords, litres, litresAtMost, typedMl } from "../words.ts";
import { dosing } from "./load-dosing.ts";
import { placeOfFilled } from "./place.ts";
import type { ToFill } from "./sizes.ts";
import {
  gyleId,
  instead,
  type JobName,
  job,
  newCapacity,
  newKind,
  solutionId,
  standsIn,
  volumeMl,
} from "./state.ts";

export interface Job {
  /** On the big button. */
  verb: string;
  /** At the head of a warning: "Filling it notes its return." */
  doing: string;
  /** After it: "117 filled." */
  done: string;
}

export const JOBS: { readonly [name in JobName]: Job } = {
  fill: { verb: "Fill", doing: "Filling it", done: "filled" },
  fine: { verb: "Fine", doing: "Fining it", done: "fined" },
  wash: { verb: "Wash", doing: "Washing it", done: "washed" },
  inspect: { verb: "Pass", doing: "Inspecting it", done: "inspected, passed" },
};

/** What a container not yet on record is entered as: its kind and what it holds. */
export const newFacts = (): { kind: string; capacity_ml: number | null } => {
  const typed = newCapacity.value;
  const nominal = CONTAINER_KINDS[newKind.value]?.capacity_ml ?? null;
  return { kind: newKind.value, capacity_ml: typed === null ? nominal : typedMl(typed) };
};

/** What the container holds when full, mL; null while nobody has said. */
export const capacityOf = (standing: Standing | null): number | null =>
  standing?.registered ? standing.capacity_ml : newFacts().capacity_ml;

export interface Deed {
  kind: Kind;
  facts: Facts;
}

/** What is noted for one container: for one not on record first what it is, then the job. */
export const deedsFor = (standing: Standing | null): Deed[] => {
  const deeds: Deed[] = [];
  if (job.value === "fine") return [{ kind: "dosed", facts: fineFacts(standing) }];
  if (!standing?.registered) deeds.push({ kind: "registered", facts: newFacts() });
  if (job.value === "wash") deeds.push({ kind: "washed", facts: washFacts() });
  else if (job.value === "inspect") deeds.push({ kind: "inspected", facts: { passed: true } });
  else deeds.push({ kind: "filled", facts: fillFacts(standing) });
  return deeds;
};

/** What is filled, how much goes in, and what it may stand. */
export const toFill = (standing: Standing | null): ToFill => ({
  kind: standing?.registered ? standing.kind : newKind.value,
  volume_ml: volumeMl.value ?? capacityOf(standing) ?? 0,
  limit_millibar: standing?.limit_millibar ?? null,
});

/** Where it stands once it is filled. */
export const filledPlace = (): string => placeOfFilled(book.places.value, standsIn.value);

const fillFacts = (standing: Standing | null): Facts => {
  const gyle = gyleId.value;
  const { kind, volume_ml } = toFill(standing);
  const shape = CONTAINER_KINDS[kind ?? ""]?.shape ?? null;
  const beer = beerDoc(known.value, gyle);
  const best_before = bestBeforeOn(known.value.now, beer, shape, ownFigures.value);
  const own = ownFigures.value;
  const rules = dosing.value;
  const noted = rules && { instead: instead.value, lots: rules.usedLots.value };
  const doses = noted ? rules.fillDoses(known.value, gyle, toFill(standing), own, noted) : [];
  const place = filledPlace();
  return { gyle, volume_ml, best_before, place, ...(doses.length > 0 ? { doses } : {}) };
};

/** The solution that is washed with; one thrown away since is none. */
export const solutionInUse = (): { id: string; name: string } | null => {
  const fields = book.solutions.value.get(solutionId.value)?.fields;
  if (fields === undefined || fields.thrown_away || fields.retired) return null;
  return { id: solutionId.value, name: fields.name ?? "a solution" };
};

const washFacts = (): Facts => {
  const solution = solutionInUse();
  return solution === null ? {} : { with: solution.name };
};

const fineFacts = (standing: Standing | null): Facts => {
  const rules = dosing.value;
  if (standing === null || rules === null) return { what: "isinglass" };
  const noted = { instead: instead.value, lots: rules.usedLots.value };
  return rules.finingFacts(known.value, standing, ownFigures.value, noted);
};

const fineRefusal = (standing: Standing | null): string | null =>
  dosing.value === null
    ? "The reckoning of doses is not on this phone yet. It comes with a signal."
    : dosing.value.finingRefusal(known.value, standing, ownFigures.value, instead.value);

/** Why the job cannot be noted as it stands; null when it can. Only slips of the finger are refused. */
export const refusal = (number: string, standing: Standing | null): string | null => {
  if (job.value === "fine") return fineRefusal(standing);
  if (!standing?.registered) {
    const { capacity_ml } = newFacts();
    if (capacity_ml === null || capacity_ml === 0) {
      return `How many litres does ${number} hold? Type it beside its kind.`;
    }
  }
  if (job.value !== "fill") return null;
  const capacity = capacityOf(standing);
  const volume = volumeMl.value ?? capacity;
  if (volume === null || volume === 0) return `How many litres go into ${number}? Press Litres.`;
  const most = mostThatFitsMl(capacity, ownFigures.value);
  return volume > most
    ? `${litres(volume)} does not go into ${number}: a ${kindWords(standing?.kind ?? newKind.value)} takes ${litresAtMost(most)} at the very most.`
    : null;
};
