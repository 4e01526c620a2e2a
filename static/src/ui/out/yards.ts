// Where empties are put: the place for them, the last chosen of several, or nowhere in particular.

import { book } from "../../store/book.ts";
import { type NamedPlace, placesFor } from "../cellar/places.ts";
import { backTo } from "./state.ts";

export const yards = (): NamedPlace[] => placesFor(book.places.value, "yard");

export const placeForEmpties = (): NamedPlace | undefined => {
  const all = yards();
  return all.find(({ id }) => id === backTo.value) ?? all[0];
};
