// Sulphite that the finings of a racking carry in, and whose figure it goes by.

import { figure } from "../../domain/figures.ts";
import { finingsIn, sulphiteIn } from "../cellar/finings-in.ts";
import type { AnyWorked } from "../parts/working.ts";
import { addedWords } from "../words/entries.ts";
import type { Racked } from "./dose-line.ts";
import { lotsThemselves } from "./lots.ts";

const whoseFigure = ({ what, product, lot }: ReturnType<typeof finingsIn>[number]): string => {
  const inIt = `Sulphite in the ${addedWords(what)}`;
  const own = lot?.fields.so2_mg_per_l;
  const name = lot?.fields.name ?? "with no name";
  if (own !== undefined) return `${inIt}: ${own} mg/L, by lot ${name}.`;
  const highest = `${figure("finings_so2_mg_per_l")[product]} mg/L, the highest published`;
  return lot === undefined
    ? `${inIt}: ${highest}, as no lot is noted.`
    : `${inIt}: ${highest}, as none is entered for lot ${name}.`;
};

/** At the beer's rates, on top of what went in before; nothing where none is carried in. */
export const sulphiteOf = (racked: Racked): { worked: AnyWorked[]; says: string[] } => {
  const { beer, gyle, settings, wentIn, lots = new Map(), next = {} } = racked;
  const fining = wentIn !== undefined;
  const used = lotsThemselves(lots, next);
  const fined = { contents: wentIn ?? null, beer, gyle, lots, next: used, fining };
  const worked = sulphiteIn(fined, settings);
  if (worked === null) return { worked: [], says: [] };
  return { worked: [worked], says: finingsIn(fined).map(whoseFigure) };
};
