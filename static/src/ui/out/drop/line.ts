// What the papers of a drop say of one container: facts of the day it was handed over.

import { londonDate } from "../../../domain/calendar.ts";
import { label } from "../../../domain/cellar/label.ts";
import { lotMark } from "../../../domain/cellar/lot.ts";
import type { Settings } from "../../../domain/figures.ts";
import type { DropLine } from "../../../domain/record-fields.ts";
import type { Standing } from "../../../domain/standing.ts";
import { attempt } from "../../attempt.ts";
import { sulphiteIn } from "../../cellar/finings-in.ts";
import { around } from "../../cellar/fit.ts";
import { labelInputs } from "../../container/label-inputs.ts";
import { type Known, text } from "../../words.ts";

export const lineOf = (
  number: string,
  standing: Standing | undefined,
  known: Known,
  settings: Settings,
): DropLine => {
  const kind = standing?.kind ?? "other_cask";
  const contents = standing?.contents ?? null;
  if (standing === undefined || contents === null) {
    const empty = { beer: "", abv_tenths: null, lot: "", best_before: null };
    return { number, kind, ...empty, volume_ml: 0, contains: "" };
  }
  const { beer, gyle } = around(standing, known);
  const fined = { contents, beer: beer?.fields ?? {}, gyle: gyle?.fields ?? {}, lots: known.lots };
  const { abv_tenths } = fined.beer;
  const gyle_number = text(gyle ?? undefined, "number");
  const racked_on = londonDate(contents.since);
  const inputs = labelInputs(fined, sulphiteIn(fined, settings));
  return {
    number,
    kind,
    beer: text(beer ?? undefined, "name"),
    abv_tenths: abv_tenths ?? null,
    lot: attempt(() => lotMark({ gyle_number, racked_on }, settings).result.mark) ?? "",
    best_before: contents.best_before,
    volume_ml: contents.left_ml,
    contains:
      attempt(
        () => label({ ...inputs, abv_tenths: abv_tenths ?? 0 }, settings).result.contains_words,
      ) ?? "",
  };
};
