// Where a container stands once it is filled: mostly the same for the whole racking.

import { AT_THE_BREWERY } from "../../domain/inference.ts";
import type { Place } from "../../domain/records.ts";

/**
 * The place chosen on this phone while it is in use; else the only one where beer is kept; else in
 * the brewery, nobody knows where. Never where it stood when it was empty.
 */
export const placeOfFilled = (places: ReadonlyMap<string, Place>, chosen: string): string => {
  const inUse = [...places].filter(([, { fields }]) => !fields.retired);
  if (inUse.some(([id]) => id === chosen)) return chosen;
  const [only, ...others] = inUse.filter(([, { fields }]) => fields.role === "store");
  return only !== undefined && others.length === 0 ? only[0] : AT_THE_BREWERY;
};
