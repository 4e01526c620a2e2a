/** On the way to the glass: moved, stillaged, vented, tapped, stooped, dipped, emptied. Twin of cellarapp/domain/steps/serving.py. */
import { carry, checkFits, checkHasBeer, countMove, put, sameDay } from "../checks.ts";
import { beBack, beStillaged, beVented, endOfBeer, onStillage } from "../inference.ts";
import { raiseQuery } from "../queries.ts";
import { mark } from "../standing.ts";
import type { StepOf } from "./step.ts";

const MOST_DIPS = 20;

export const moved: StepOf = (standing, entry) => {
  const justSent = standing.trip !== null && sameDay(standing.trip, entry);
  const inferred = beBack(standing, entry, justSent);
  carry(standing, entry, entry.facts.place);
  return inferred;
};

export const stillaged: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const to: string | undefined = entry.facts.place;
  const elsewhere = to !== undefined && standing.place?.at !== to;
  if (standing.serving && !elsewhere) return inferred;
  if (elsewhere) {
    put(standing, entry, to);
    inferred.push("moved");
  }
  standing.serving = onStillage(mark(entry));
  countMove(standing, entry);
  return inferred;
};

export const vented: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const [serving, missing] = beStillaged(standing, entry);
  const first_at = serving.vented?.first_at ?? entry.effective_at;
  const spile = entry.facts.spile;
  standing.serving = { ...serving, vented: { ...mark(entry), spile, first_at } };
  return [...inferred, ...missing];
};

export const tapped: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const [onStillage, notStillaged] = beStillaged(standing, entry);
  const [serving, notVented] = beVented(onStillage, entry);
  standing.serving = { ...serving, tapped: mark(entry) };
  return [...inferred, ...notStillaged, ...notVented];
};

export const stooped: StepOf = (standing, entry) => {
  const inferred = beBack(standing, entry, true);
  checkHasBeer(standing, entry);
  const [serving, notStillaged] = beStillaged(standing, entry);
  standing.serving = { ...serving, stooped: mark(entry) };
  return [...inferred, ...notStillaged];
};

export const dipped: StepOf = (standing, entry) => {
  const contents = standing.contents;
  if (!contents) {
    checkHasBeer(standing, entry);
    return [];
  }
  const leftMl: number = entry.facts.left_ml;
  if (leftMl > contents.left_ml) {
    const before = contents.dipped?.entry ?? contents.entry;
    raiseQuery(standing, "dip_rose", [before, entry.id], entry, {
      before_ml: contents.left_ml,
      now_ml: leftMl,
    });
  }
  checkFits(standing, entry, entry.id, leftMl);
  const tilted = standing.serving?.stooped;
  if (tilted && entry.facts.wet_mm !== undefined) {
    raiseQuery(standing, "dipped_tilted", [tilted.entry, entry.id], entry);
  }
  standing.contents = {
    ...contents,
    left_ml: leftMl,
    dipped: mark(entry),
    dips: [...contents.dips, { at: entry.effective_at, left_ml: leftMl }].slice(-MOST_DIPS),
  };
  return [];
};

export const checked: StepOf = (standing, entry) => {
  const contents = standing.contents;
  if (contents && entry.facts.taste) standing.contents = { ...contents, tasted: mark(entry) };
  return [];
};

export const planned: StepOf = (standing, entry) => {
  const saleAt: string | null = entry.facts.sale_at;
  standing.planned = saleAt === null ? null : { ...mark(entry), sale_at: saleAt };
  return [];
};

export const emptied: StepOf = (standing, entry) => {
  const clean = standing.clean;
  const twiceToday = clean?.state === "dirty" && sameDay(clean, entry);
  if (!standing.contents && clean && !twiceToday)
    raiseQuery(standing, "emptied_empty", [entry.id], entry);
  endOfBeer(standing, entry, false);
  return [];
};
