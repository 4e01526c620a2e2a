/** The figures of the trade, from the one file that the brewery's server reads too. */
import figuresJson from "../../../cellarapp/domain/figures.json";
import { numberIn } from "./number-in.ts";

export interface Figure {
  /** The words and where it comes from are left out of the client itself and fetched when asked for. */
  name?: string;
  value: unknown;
  unit: string;
  kind?: string;
  source: string | null;
  read_on: string | null;
  remark: string;
  low?: number;
  high?: number;
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

/** The brewery's own value of a figure that is one number, or the figure itself. Throws out-of-range. */
export function setting(name: FigureId, settings: Settings | null): number {
  const known = FIGURES[name];
  const own = settings?.[name] ?? known.value;
  const why = "A setting of the brewery.";
  return numberIn(name, own, known.low ?? null, known.high ?? null, known.unit, why);
}
