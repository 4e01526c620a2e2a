// Why somebody may not record something here, in words that name who may. Where the phone does not
// know the person's role it lets them record: the brewery judges, and holds what is not theirs.

import type { Kind } from "../domain/entries.ts";
import { mayRecord, type Role } from "../domain/roles.ts";
import { type Account, roleOf } from "./account.ts";

const DOWN_AS: { readonly [role in Role]: string } = {
  owner: "is an owner",
  cellar: "is down for the cellar",
  driver: "is down as driver",
  reader: "is down to look, not to record",
};

/** Null where the person may. */
export const whyNot = (account: Account, person: string, kind: Kind): string | null => {
  const role = roleOf(account, person);
  if (role === null || mayRecord(role, kind)) return null;
  return `${person} ${DOWN_AS[role]}. This is for ${whoMay(account, (other) => mayRecord(other, kind))}.`;
};

/** "Ann and Bob", those of a role that may; "the owner" where the phone knows no names. */
export const whoMay = ({ me }: Account, may: (role: Role) => boolean): string => {
  const names = (me?.people ?? []).filter(({ role }) => may(role)).map(({ name }) => name);
  if (names.length === 0) return "the owner";
  return names.length === 1
    ? `${names[0]}`
    : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
};
