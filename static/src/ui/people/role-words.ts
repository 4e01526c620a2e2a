// The roles in words.

import type { Role } from "../../domain/roles.ts";

const WORDS: { readonly [role in Role]: { name: string; may: string } } = {
  owner: { name: "Owner", may: "does everything, and looks after people and phones" },
  cellar: { name: "Cellar", may: "records everything of beer, containers and customers" },
  driver: { name: "Driver", may: "records what goes out, comes back, is moved or missing" },
  reader: { name: "Looks only", may: "sees everything and records nothing" },
};

export const roleName = (role: Role): string => WORDS[role].name;

/** "records what goes out, …" */
export const roleMay = (role: Role): string => WORDS[role].may;
