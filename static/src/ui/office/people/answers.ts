// What the brewery answers about people, phones, what is held and who did what.

import type { Role } from "../../../domain/roles.ts";

export interface PersonAnswer {
  id: string;
  name: string;
  role: Role;
  has_passphrase: boolean;
  has_pin: boolean;
  retired: boolean;
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
  id: string;
  /** The entry as it was sent, as JSON. */
  raw: string;
  /** Why it is held: "/problems/…". */
  type: string;
  device: string | null;
  device_name?: string | null;
  received_at: string;
}

export interface AuditAnswer {
  items: AuditItem[];
  next: string | null;
}

export interface AuditItem {
  id: string;
  at: string;
  /** Null for the server's own commands, and for somebody who was not let in. */
  who: string | null;
  device: string | null;
  what: string;
  about: string;
}
