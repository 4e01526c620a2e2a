// The places that nearly every brewery has, entered in one go; they can be renamed and added to.

import type { PlaceFields } from "../../../domain/record-fields.ts";
import { book, type Saved } from "../../../store/book.ts";
import { save } from "../../parts/say.ts";
import { newId } from "../new-id.ts";

export const USUAL_PLACES: readonly Required<Pick<PlaceFields, "name" | "role">>[] = [
  { name: "Cold room", role: "store" },
  { name: "Stillage", role: "stillage" },
  { name: "Bar", role: "bar" },
  { name: "Yard", role: "yard" },
];

export const enterUsualPlaces = (): Promise<boolean> =>
  save("Four places entered.", async () => {
    const saved: Saved[] = [];
    for (const place of USUAL_PLACES) saved.push(await book.record("place", newId(), place));
    return saved;
  });
