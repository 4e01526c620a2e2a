import type { Entry } from "../entries.ts";
import type { Standing } from "../standing.ts";

/** Changes the fresh standing it is given and answers with the steps it had to infer. */
export type StepOf = (standing: Standing, entry: Entry) => string[];
