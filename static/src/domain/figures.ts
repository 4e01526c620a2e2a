/** The figures of the trade, from the one file that the brewery's server reads too. */
import figuresJson from "../../../cellarapp/domain/figures.json";
import { numberIn } from "./number-in.ts";

export interface Figure {
  /** The words, the unit and where it comes from are left out of the client itself and fetched when asked for. */
  name?: string;
  unit?: string;
  value: unknown;
  kind?: string;
  source: string | null;
  read_on: string | null;
  remark: string;
  low?: number;
  high?: number;
  /** Of a list, which rises: how many values it has. */
  least?: number;
  most?: number;
}

export type Figures = typeof figuresJson;
export type FigureId = keyof Figures;

/** The brewery's own values, by the ids of the figures that they stand in for. */
export type Settings = Readonly<Record<string, unknown>>;

export const FIGURES: Readonly<Record<FigureId, Figure>> = figuresJson;

/** The value of a figure by its id. */
export function figure<Id extends FigureId>(name: Id): Figures[Id]["value"] {
  return figuresJson[name].value;
}

/** The brewery's own values are noted in whole millionths, so that nothing is rounded on the way. */
export const MILLIONTHS = 1_000_000;

const OWN = "A setting of the brewery";

/** The brewery's own value of a figure that is one number, or the figure itself. Throws out-of-range. */
export function setting(name: FigureId, settings: Settings | null): number {
  const known = FIGURES[name];
  const own = settings?.[name] ?? known.value;
  return numberIn(name, own, known.low ?? null, known.high ?? null, known.unit ?? "", `${OWN}.`);
}

/** The same of a figure that is a list, whose values rise. Throws out-of-range. */
export function settingList(name: FigureId, settings: Settings | null): number[] {
  const { value, low = 0, high = null, least = 0, most = null, unit = "" } = FIGURES[name];
  const own = settings?.[name] ?? value;
  const count = Array.isArray(own) ? own.length : "not a list";
  numberIn(name, count, least, most, "values", `${OWN}.`);
  let above = low;
  return (own as unknown[]).map((one) => {
    above = numberIn(name, one, above, high, unit, `${OWN}, none below the one before it.`);
    return above;
  });
}
