// Why somebody may not record something here, in words that name who may. Where the phone does not
// know the person's role it lets them record: the brewery judges, and holds what is not theirs.

import type { Kind, MadeEntry } from "../domain/entries.ts";
import { mayPutRight, mayRecord, ROLES, type Role } from "../domain/roles.ts";
import { type Account, roleOf } from "./account.ts";

const DOWN_AS: { readonly [role in Role]: string } = {
  owner: "is an owner",
  cellar: "is down for the cellar",
  driver: "is down as driver",
  reader: "is down to look, not to record",
};

/** Null where the person may. Of a correction also what it is about is asked, where it is given. */
export const whyNot = (
  account: Account,
  person: string,
  kind: Kind,
  target?: MadeEntry,
): string | null => {
  const may = (role: Role, own: boolean): boolean =>
    mayRecord(role, kind) && (target === undefined || mayPutRight(role, target.kind, own));
  const role = roleOf(account, person);
  if (role === null || may(role, target?.person === person)) return null;
  return `${person} ${DOWN_AS[role]}. This is for ${whoMay(account, (other) => may(other, false))}.`;
};

const ONE_OF: { readonly [role in Role]: string } = {
  owner: "an owner",
  cellar: "somebody of the cellar",
  driver: "a driver",
  reader: "anybody",
};

/** "Ann and Bob", those of this phone who may; "an owner or a driver" where it knows none. */
export const whoMay = ({ me }: Account, may: (role: Role) => boolean): string => {
  const names = (me?.people ?? [])
    .filter(({ role }) => may(role))
    .map(({ name }) => name)
    .sort();
  return names.length > 0
    ? listed(names, "and")
    : listed(
        ROLES.filter(may).map((role) => ONE_OF[role]),
        "or",
      );
};

const listed = (words: readonly string[], last: "and" | "or"): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
