// Who uses this phone, as far as the phone knows with no network: what the brewery said last of it
// and its people, and who of them has it in hand. Being signed out or revoked changes what the
// brewery takes and gives, never whether an entry can be recorded here.

import type { Signal } from "@preact/signals";
import type { Role } from "../domain/roles.ts";
import type { Phone } from "./phone.ts";

/** Enough to know a PIN again with no network; not enough to guess it in a moment. */
export interface PinCheck {
  salt: string;
  iterations: number;
  hash: string;
}

export interface Person {
  name: string;
  role: Role;
  pin_check: PinCheck | null;
}

/** What the brewery says of this phone and its people. */
export interface Me {
  device: { id: string; name: string };
  /** Who had it in hand when the brewery was last told. */
  person: { name: string; role: Role };
  /** Who has proved themselves on it. */
  people: Person[];
  stepped_up_until: string | null;
  version: number;
}

/** How the brewery received this phone the last time: let in, or why not. */
export type Door = "in" | "not-set-up" | "not-paired" | "revoked";

export interface Account {
  /** Null until the brewery has said. */
  door: Door | null;
  /** Kept when signed out: names, roles and PINs go on working with no network. */
  me: Me | null;
}

const NOBODY: Account = { door: null, me: null };

export const accountOf = (phone: Phone): Signal<Account> =>
  phone.settings.signal("account", NOBODY);

/** The name that stands beside what is recorded here; "" while nobody has said. */
export const personOf = (phone: Phone): Signal<string> => phone.settings.signal("person", "");

/** The role of a person of this phone; null where the phone has never heard of them. */
export const roleOf = ({ me }: Account, name: string): Role | null =>
  me?.people.find((person) => person.name === name)?.role ??
  (me?.person.name === name ? me.person.role : null);

export const setDoor = (phone: Phone, door: Door): void => {
  const account = accountOf(phone);
  if (account.peek().door !== door) account.value = { ...account.peek(), door };
};

/**
 * Take what the brewery says. Who has the phone in hand stays, so long as they are still one of
 * its people; `arriving` is somebody who has just signed in or been paired, and takes it over.
 * Answers how the role of who stays has changed, or null.
 */
export const takeMe = (phone: Phone, me: Me, { arriving = false } = {}): RoleChange | null => {
  const account = accountOf(phone);
  const person = personOf(phone);
  const before = roleOf(account.peek(), person.peek());
  account.value = { door: "in", me };
  const stays = !arriving && roleOf(account.peek(), person.peek()) !== null;
  if (!stays) person.value = me.person.name;
  const role = roleOf(account.peek(), person.peek());
  if (!stays || before === null || role === null || before === role) return null;
  return { person: person.peek(), before, role };
};

export interface RoleChange {
  person: string;
  before: Role;
  role: Role;
}
