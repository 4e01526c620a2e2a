/** The figures of the trade, from the one file that the brewery's server reads too. */
import figuresJson from "../../../cellarapp/domain/figures.json";

export interface Figure {
  value: unknown;
  unit: string;
  kind: string;
  source: string | null;
  read_on: string | null;
  remark: string;
}

export const FIGURES: Readonly<Record<string, Figure>> = figuresJson;

/** A figure that is one number, by its id. */
export function figure(
  name:
    | "conditioning_days"
    | "best_before_days"
    | "on_sale_days"
    | "agreed_days"
    | "fill_above_capacity_permille",
): number {
  return figuresJson[name].value;
}
