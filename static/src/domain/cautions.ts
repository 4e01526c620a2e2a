/** Sentences that warn, from the one file that the brewery's server reads too. */
import cautionsJson from "../../../cellarapp/domain/cautions.json";

export interface Caution {
  words: string;
  source: string | null;
}

export type CautionId = keyof typeof cautionsJson;

export const CAUTIONS: Readonly<Record<CautionId, Caution>> = cautionsJson;
