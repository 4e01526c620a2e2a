// The places of the brewery that something can be put in.

import type { PlaceFields } from "../../domain/record-fields.ts";
import type { Place } from "../../domain/records.ts";

export type Role = PlaceFields["role"];
export type Places = ReadonlyMap<string, Place>;
export interface NamedPlace {
  id: string;
  name: string;
  role: Role | undefined;
}

/** Places in use, by name; only those of a role, if one is given. */
export const placesFor = (places: Places, role?: Role): NamedPlace[] =>
  [...places]
    .filter(([, place]) => !place.fields.retired)
    .filter(([, place]) => role === undefined || place.fields.role === role)
    .map(([id, place]) => ({ id, name: place.fields.name ?? "", role: place.fields.role }))
    .filter(({ name }) => name !== "")
    .sort((a, b) => (a.name < b.name ? -1 : 1));

/** Where to move a full container: not where it is, nor among the empties. */
export const placesToMoveTo = (places: Places, from: string | null): NamedPlace[] =>
  placesFor(places).filter(({ id, role }) => id !== from && role !== "yard");
