// What the brewery answers about people, phones, what is held and who did what.

import type { Role } from "../../../domain/roles.ts";

export interface PersonAnswer {
  id: string;
  name: string;
  role: Role;
  /** What they can prove themselves with. */
  has: ("passphrase" | "pin")[];
  retired_at: string | null;
}

export interface DeviceAnswer {
  id: string;
  name: string;
  /** Names. */
  people: string[];
  paired_at: string;
  last_seen_at: string;
  waiting: number;
  oldest_waiting_at: string | null;
  app: string;
  revoked_at: string | null;
}

export interface InviteAnswer {
  link: string;
  token: string;
  expires_at: string;
  qr_svg: string;
}

export interface HeldAnswer {
  /** Names it when it is decided about. */
  key: string;
  /** The entry as it was sent, as JSON. */
  raw: string;
  /** Why it is held: "/problems/…". */
  type: string;
  /** The id of the phone that sent it. */
  device: string;
  received_at: string;
  /** What an owner has decided; null while it waits for that. */
  decision: "take" | "put_aside" | null;
}

export interface AuditAnswer {
  lines: AuditLine[];
  /** What to ask for before; null at the end. */
  next: number | null;
}

export interface AuditLine {
  id: number;
  at: string;
  /** Null for the server's own commands, and for somebody who was not let in. */
  who: string | null;
  /** The id of a phone. */
  device: string | null;
  what: string;
  about: string;
}

/** What phones are called, by their id. */
export type DeviceNames = ReadonlyMap<string, string>;

export const namesOf = ({ devices }: { devices: DeviceAnswer[] }): DeviceNames =>
  new Map(devices.map(({ id, name }) => [id, name]));
