/** Who may record what. Twin of cellarapp/domain/roles.py; the brewery's word is the last. */

import type { Kind } from "./entries.ts";

export const ROLES = ["owner", "cellar", "driver", "reader"] as const;
export type Role = (typeof ROLES)[number];

/** What happens on the road, and the way back from a slip of one's own. */
const DRIVER: readonly Kind[] = [
  "sent",
  "returned",
  "moved",
  "missing",
  "found",
  "noted",
  "reported",
  "told",
  "chased",
  "linked",
  "drop",
  "voided",
  "renumbered",
];

/** What cannot be taken back. */
const OWNER_ALONE: readonly Kind[] = ["erased", "forgotten"];

/** Whether entries of this kind are taken from somebody in this role; others are held. */
export function mayRecord(role: Role, kind: Kind): boolean {
  if (role === "driver") return DRIVER.includes(kind);
  if (role === "cellar") return !OWNER_ALONE.includes(kind);
  return role === "owner";
}

/**
 * Whether somebody in this role may void or renumber an entry of this kind. Nobody undoes what they
 * might not have recorded, and on the road nobody what another did.
 */
export function mayPutRight(role: Role, kind: Kind, own: boolean): boolean {
  return mayRecord(role, kind) && (own || role !== "driver");
}
