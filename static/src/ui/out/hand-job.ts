// One of Out's two jobs at the van, as the pad and what stands above it need to know it.

import type { Standing } from "../../domain/standing.ts";
import type { Remark } from "./back.ts";
import type { PadState } from "./pad-state.ts";

export interface HandJob {
  pad: PadState;
  /** On the big button: "Take back". */
  verb: string;
  /** What the screen says before anything is typed. */
  hint: string;
  /** What to know of one container before the button is pressed. */
  remarks: (standing: Standing | null) => Remark[];
  /** Why nothing can be recorded now; null when it can. */
  refusal: string | null;
  record: (numbers: readonly string[]) => void;
  /** Whose it is, of one not on record, where the job asks that. */
  owner?: { name: string; set: (name: string) => void };
  /** Beer still in it, where the job has that. */
  ullage?: { ml: number | null; set: (ml: number | null) => void };
}
