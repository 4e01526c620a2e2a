// Recording a deed, with what its answers leave open filled in.

import { CONTAINER_KINDS, mostThatFitsMl } from "../../domain/containers.ts";
import type { Facts } from "../../domain/entries.ts";
import type { Standing } from "../../domain/standing.ts";
import { dueOn } from "../../domain/trips.ts";
import { book } from "../../store/book.ts";
import { earlyWords } from "../cellar/early.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { save } from "../parts/say.ts";
import { litresAtMost } from "../words.ts";
import type { Deed } from "./deeds.ts";
import { withInside, wrongInside } from "./inside.ts";

/** What is wrong with the answers taken together, by fact; the server would refuse these. */
export const wrongTogether = (deed: Deed, facts: Facts, standing: Standing): Facts => {
  if (deed.kind === "registered") {
    const capacity = facts["capacity_ml"] ?? nominal(facts["kind"]);
    const faults = wrongInside(facts);
    return capacity === null ? { ...faults, capacity_ml: "How many litres does it hold?" } : faults;
  }
  const fact = deed.kind === "dipped" ? "left_ml" : "ullage_ml";
  const most = mostThatFitsMl(standing.capacity_ml, ownFigures.value);
  return (facts[fact] ?? 0) > most
    ? { [fact]: `It holds ${litresAtMost(most)} at the very most.` }
    : {};
};

const nominal = (kind: string): number | null => CONTAINER_KINDS[kind]?.capacity_ml ?? null;

const completed = (deed: Deed, facts: Facts, standing: Standing): Facts => {
  if (deed.kind === "registered") {
    return withInside({ ...facts, capacity_ml: facts["capacity_ml"] ?? nominal(facts["kind"]) });
  }
  if (deed.kind === "sent") {
    const customer = book.customers.peek().get(facts["customer"]) ?? null;
    return { ...facts, due_on: dueOn(book.now(), customer, ownFigures.value) };
  }
  if (deed.kind === "returned" && standing.trip !== null) {
    return { ...facts, customer: standing.trip.customer };
  }
  return facts;
};

let underWay = false;

/** Answers whether it was saved. A second tap while the first is being kept is no second deed. */
export const take = async (deed: Deed, answers: Facts, standing: Standing): Promise<boolean> => {
  if (underWay) return false;
  underWay = true;
  try {
    const facts = completed(deed, { ...deed.facts, ...answers }, standing);
    const { number } = standing;
    const early =
      deed.kind === "tapped" ? earlyWords(standing, known.peek(), ownFigures.peek()) : "";
    return await save(`${number} ${deed.done}.${early}`, () =>
      book.record(deed.kind, number, facts),
    );
  } finally {
    underWay = false;
  }
};
