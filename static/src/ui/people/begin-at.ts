// Where somebody begins who has just taken a phone in hand.

import { role } from "../mine.ts";
import { goOnTo } from "../shell/route.ts";

/** A driver has nothing to do at the bench. */
export const beginAtTheirs = (): void => goOnTo(role.value === "driver" ? "out" : "bench");
