// When it is time to ask a customer again.

import { addDays, londonDate } from "../../domain/calendar.ts";
import { setting } from "../../domain/figures.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";

/** The day on which it is time to ask again where no day is promised. */
export const askAgainOn = (): string => {
  const days = setting("ask_again_days", ownFigures.value);
  return addDays(londonDate(known.value.now), Math.trunc(days));
};
