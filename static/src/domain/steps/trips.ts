/** Out and back, and what others say of where it is. Twin of cellarapp/domain/steps/trips.py. */
import { carry, checkHasBeer, countMove, hold, put, sameDay } from "../checks.ts";
import { AT_THE_BREWERY, beBack, beFound, endOfBeer } from "../inference.ts";
import { lapse, raiseQuery } from "../queries.ts";
import { mark } from "../standing.ts";
import type { StepOf } from "./step.ts";

export const sent: StepOf = (standing, entry) => {
  const facts = entry.facts;
  const trip = standing.trip;
  const inferred: string[] = [];
  if (trip && !(trip.customer === facts.customer && sameDay(trip, entry))) {
    if (trip.customer !== facts.customer) {
      raiseQuery(standing, "sent_elsewhere", [trip.entry, entry.id], entry, {
        first_customer: trip.customer,
        second_customer: facts.customer,
      });
    }
    inferred.push(...beBack(standing, entry, true));
  }
  const held = standing.held;
  if (held?.state === "set_aside") {
    raiseQuery(standing, "sent_set_aside", [held.entry, entry.id], entry, { why: held.why });
  }
  const onRecordSince = facts.on_record_since ?? null;
  if (onRecordSince === null && standing.owner === null) checkHasBeer(standing, entry);
  countMove(standing, entry);
  standing.serving = null;
  standing.planned = null;
  standing.trip = {
    ...mark(entry),
    customer: facts.customer,
    due_on: facts.due_on,
    on_record_since: onRecordSince,
  };
  standing.place = { ...mark(entry), at: facts.customer, with_customer: true };
  return inferred;
};

export const returned: StepOf = (standing, entry) => {
  const facts = entry.facts;
  const back = standing.returned;
  if (!standing.trip && back && sameDay(back, entry)) return [];
  const inferred = standing.trip ? [] : ["sent"];
  const contents = standing.contents;
  const ullageMl: number = facts.ullage_ml ?? 0;
  if (ullageMl > 0 && contents) {
    standing.contents = { ...contents, left_ml: Math.min(ullageMl, contents.left_ml) };
    standing.serving = null;
  } else {
    endOfBeer(standing, entry, false);
  }
  standing.trip = null;
  standing.returned = mark(entry);
  put(standing, entry, facts.place ?? AT_THE_BREWERY);
  return inferred;
};

export const missing: StepOf = (standing, entry) => {
  hold(standing, entry, "missing");
  return [];
};

export const found: StepOf = (standing, entry) => {
  if (entry.facts.place === undefined) return [];
  const inferred = beBack(standing, entry);
  carry(standing, entry, entry.facts.place);
  return inferred;
};

export const reported: StepOf = (standing, entry) => {
  const { where = "", words = "", name = "", phone = "" } = entry.facts;
  raiseQuery(standing, "reported", [entry.id], entry, { where, words, name, phone });
  return [];
};

export const told: StepOf = (standing, entry) => {
  const { customer, says } = entry.facts;
  if (standing.trip === null || standing.trip.customer !== customer) return [];
  lapse(standing, ["told_not_here"]);
  const { told: _, ...trip } = standing.trip;
  standing.trip = says === "here" ? trip : { ...trip, told: { ...mark(entry), says } };
  if (says !== "not_here") return beFound(standing);
  raiseQuery(standing, "told_not_here", [trip.entry, entry.id], entry, { customer });
  return [];
};
