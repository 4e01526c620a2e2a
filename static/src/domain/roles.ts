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
  "chased",
  "drop",
  "voided",
  "renumbered",
];

/** Whether entries of this kind are taken from somebody in this role; others are held. */
export function mayRecord(role: Role, kind: Kind): boolean {
  if (role === "driver") return DRIVER.includes(kind);
  return role !== "reader";
}
