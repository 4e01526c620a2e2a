// What the rule of labels is asked of a fill, whichever paper it is for.

import {
  type Fined,
  isinglassIn,
  type sulphiteIn,
  sulphitesOnLabel,
} from "../cellar/finings-in.ts";

/** Isinglass counts as in it until somebody has said; `sulphite` is that of the same fill. */
export const labelInputs = (fined: Fined, sulphite: ReturnType<typeof sulphiteIn>) => ({
  cereals: fined.beer.cereals ?? [],
  milk: fined.beer.milk ?? false,
  isinglass: isinglassIn(fined) ?? true,
  sulphites_mg_per_l: sulphitesOnLabel(sulphite),
});
