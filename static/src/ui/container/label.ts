// What the law and a customer want to read on a full container, from what is known of its beer.

import { londonDate } from "../../domain/calendar.ts";
import { ageing } from "../../domain/cellar/ageing.ts";
import { dateMark } from "../../domain/cellar/date-mark.ts";
import { label } from "../../domain/cellar/label.ts";
import { lotMark } from "../../domain/cellar/lot.ts";
import { type Around, caskInputs } from "../../domain/cellar/told.ts";
import type { Settings } from "../../domain/figures.ts";
import { bestBeforeOn } from "../../domain/readiness.ts";
import type { Standing } from "../../domain/standing.ts";
import { attempt } from "../attempt.ts";
import { workedOf } from "../bench/expected.ts";
import { type Fined, sulphiteIn, sulphiteWords } from "../cellar/finings-in.ts";
import { around } from "../cellar/fit.ts";
import type { AnyWorked } from "../parts/working.ts";
import { beerDoc } from "../words/known.ts";
import { count, type Known, listWords, sentence } from "../words.ts";
import { labelInputs } from "./label-inputs.ts";
import { strengthIn, strengthInWords } from "./strength-in.ts";

export interface LabelLine {
  what: string;
  says: string;
}

export interface Label {
  /** Words for the container, one line each, with what the line is. */
  lines: LabelLine[];
  /** What is not known and would change the words. */
  missing: string[];
  worked: AnyWorked[];
}

const dateLine = (mark: ReturnType<typeof dateMark>): LabelLine => {
  const { words, allowed, needed } = mark.result;
  const others = allowed.map((form) => form.words).filter((form) => form !== words);
  const or = others.length === 0 ? "" : ` Allowed too: ${listWords(others)}.`;
  const why = needed ? "" : " At its strength no date is needed.";
  return { what: "Date", says: `${words}.${or}${why}` };
};

const CASK_WORDS: { [id: string]: string } = {
  name: "the beer's name",
  best_before: "the date",
  maker: "who made it",
};

const wordLines = ({ result }: ReturnType<typeof label>): LabelLine[] => [
  {
    what: "Strength",
    says: `${result.strength_words}${result.strength_needed ? "" : " (need not be shown)"}`,
  },
  { what: "Allergens", says: result.contains_words || "None that is known." },
  {
    what: "On the cask itself",
    says: `${sentence(listWords(result.on_the_cask.map((id) => CASK_WORDS[id] ?? id)))}. The rest may stand on the papers.`,
  },
  { what: "Vegan", says: result.may_be_vegan ? "May be called vegan." : "Not to be called vegan." },
];

const missingOf = (beer: ReturnType<typeof around>["beer"]): string[] => {
  const fields = beer?.fields;
  return [
    fields?.abv_tenths === undefined ? "its strength" : "",
    fields?.cereals === undefined ? "its cereals" : "",
    fields?.milk === undefined ? "whether there is milk in it" : "",
  ].filter(Boolean);
};

interface Labelled {
  beer: Around["beer"];
  gyle: Around["gyle"];
  contents: Fined["contents"];
  packed_on: string;
  best: string | null;
}

const labelFor = (
  { beer, gyle, contents, packed_on, best }: Labelled,
  known: Known,
  settings: Settings,
): Label => {
  const fined = { contents, beer: beer?.fields ?? {}, gyle: gyle?.fields ?? {}, lots: known.lots };
  const sulphite = sulphiteIn(fined, settings);
  const inIt = strengthIn(fined, settings);
  const { abv_tenths } = fined.beer;
  const number = gyle?.fields.number;
  const mark =
    abv_tenths === undefined || best === null
      ? null
      : attempt(() => dateMark({ packed_on, best_before_on: best, abv_tenths }, settings));
  const lot =
    number === undefined
      ? null
      : attempt(() => lotMark({ gyle_number: number, racked_on: packed_on }, settings));
  const sulphites = sulphite === null ? "" : sulphiteWords(sulphite);
  const words =
    abv_tenths === undefined
      ? null
      : attempt(() => label({ ...labelInputs(fined, sulphite), abv_tenths }, settings));
  return {
    lines: [
      ...(mark === null ? [] : [dateLine(mark)]),
      ...(lot === null ? [] : [{ what: "Lot", says: lot.result.mark }]),
      ...(words === null ? [] : wordLines(words)),
      ...(inIt === null ? [] : [{ what: "In it", says: strengthInWords(inIt, abv_tenths) }]),
      ...(sulphites === "" ? [] : [{ what: "Sulphites", says: sulphites }]),
    ],
    missing: missingOf(beer),
    worked: [
      ...[mark, lot, words, sulphites === "" ? null : sulphite].filter((one) => one !== null),
      ...(inIt === null ? [] : workedOf(inIt)),
    ],
  };
};

/** Null while there is no beer in it. */
export const labelOf = (standing: Standing, known: Known, settings: Settings): Label | null => {
  const { contents } = standing;
  if (contents === null) return null;
  const { beer, gyle } = around(standing, known);
  const packed_on = londonDate(contents.since);
  const best = contents.best_before;
  return labelFor({ beer, gyle, contents, packed_on, best }, known, settings);
};

/** The same for a cask of a gyle that is racked today; null where its beer is not known here. */
export const labelOfGyle = (id: string, known: Known, settings: Settings): Label | null => {
  const gyle = known.gyles.get(id) ?? null;
  const beer = beerDoc(known, id);
  if (gyle === null || beer === null) return null;
  const packed_on = londonDate(known.now);
  const best = bestBeforeOn(known.now, beer, "cask", settings);
  return labelFor({ beer, gyle, contents: null, packed_on, best }, known, settings);
};

export interface Aged {
  says: string;
  worked: ReturnType<typeof ageing>;
}

/** What warm days have cost it: advice, which moves no printed date. Null while it is empty. */
export const agedOf = (standing: Standing, known: Known, settings: Settings): Aged | null => {
  const inputs = caskInputs(standing, around(standing, known));
  if (inputs === null || inputs.filled_at > known.now) return null;
  const { filled_at: from_at, stays = null, readings = null } = inputs;
  const history = { stays, readings };
  const worked = attempt(() => ageing({ from_at, until_at: known.now, ...history }, settings));
  if (worked === null) return null;
  const passed = Math.floor(worked.result.passed_days);
  const lost = Math.round(worked.result.lost_days);
  const says =
    lost === 0
      ? `Racked ${count(passed, "day")} ago, and warm days have cost it no more than that.`
      : `Racked ${count(passed, "day")} ago; warm days have cost it about ${count(lost, "day")} more. The date on it stands.`;
  return { says: `${says} An estimate.`, worked };
};
