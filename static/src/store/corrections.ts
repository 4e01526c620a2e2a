// Drafts of the entries that put others right: undo, wrong number, and ways out of a query.

import { isContainerKind, type MadeEntry } from "../domain/entries.ts";
import { isNumber, normalNumber } from "../domain/numbers.ts";
import { liveSettlements } from "../domain/queries.ts";
import type { Phone } from "./phone.ts";
import type { Draft } from "./saving.ts";
import { NotPossible } from "./trouble.ts";

export const voidedDraft = (phone: Phone, target: string, subject?: string): Draft => ({
  kind: "voided",
  subject: subjectOf(phone, target, subject),
  facts: { target },
});

export const renumberedDraft = (
  phone: Phone,
  target: string,
  number: string,
  subject?: string,
): Draft => {
  const from = subjectOf(phone, target, subject);
  const own = ownEntry(phone, target);
  if (!isNumber(from) || (own !== undefined && !isContainerKind(own.kind))) {
    throw new NotPossible("Only an entry about a container can be moved to another number.");
  }
  return { kind: "renumbered", subject: from, facts: { target, to: numberFrom(number) } };
};

export const settledDraft = (phone: Phone, subject: string, query: string, way: string): Draft => {
  const earlier = phone.views.containers.get(subject)?.settlements[query] ?? [];
  const replaces = liveSettlements(earlier).map(({ entry }) => entry);
  const facts = replaces.length === 0 ? { query, way } : { query, way, replaces };
  return { kind: "settled", subject, facts };
};

const ownEntry = (phone: Phone, id: string): MadeEntry | undefined => {
  const own = phone.own.byId(id);
  if (own?.where !== "attention") return own?.kept.entry;
  throw new NotPossible(
    "The brewery has not taken this entry, so there is nothing to undo. It needs attention.",
  );
};

const subjectOf = (phone: Phone, target: string, given?: string): string => {
  const subject = ownEntry(phone, target)?.subject ?? given;
  if (subject !== undefined) return subject;
  throw new NotPossible("This phone does not know that entry. Look it up under its container.");
};

const numberFrom = (typed: string): string => {
  try {
    return normalNumber(typed);
  } catch (error) {
    throw new NotPossible(`"${typed}" is not a container's number.`, error);
  }
};
