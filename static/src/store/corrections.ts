// Drafts of the entries that put others right: undo, wrong number, and ways out of a query.

import { type Facts, isContainerKind, isRecordKind, type MadeEntry } from "../domain/entries.ts";
import { isNumber, normalNumber } from "../domain/numbers.ts";
import { liveSettlements } from "../domain/queries.ts";
import type { Own } from "./own-entries.ts";
import type { Phone } from "./phone.ts";
import type { Draft } from "./saving.ts";
import { NotPossible } from "./trouble.ts";

/** An entry about a container is voided; what a record's entry set is set back. */
export const undoDraft = (phone: Phone, target: string, subject?: string): Draft => {
  const own = phone.own.byId(target);
  if (own !== undefined && !isNumber(own.kept.entry.subject)) return setBackDraft(phone, own);
  return { kind: "voided", subject: subjectOf(phone, target, subject), facts: { target } };
};

/** Fields that still say what the entry said, as they were before; a new record is retired. */
const setBackDraft = (phone: Phone, { kept: { entry, before } }: Own): Draft => {
  const { kind, subject, facts } = entry;
  if (kind === "trial_read") return { kind, subject, facts: { jars: [], instead_of: [entry.id] } };
  if (!isRecordKind(kind) || before === null || "last" in before) {
    throw new NotPossible("This cannot be taken back. Note what is right instead.");
  }
  const now = phone.views.record(kind, subject)?.fields ?? {};
  const earlier = before.fields;
  if (Object.keys(earlier).length === 0) return { kind, subject, facts: { retired: true } };
  const back: Facts = {};
  for (const [name, value] of Object.entries(facts)) {
    const was = earlier[name] ?? (name === "retired" ? false : undefined);
    if (was !== undefined && now[name] === value) back[name] = was;
  }
  if (Object.keys(back).length > 0) return { kind, subject, facts: back };
  throw new NotPossible("There is nothing to set back: it has been changed again since.");
};

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
