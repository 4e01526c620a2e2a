/** The bench's sheet: doses and totals to draw. Twin of cellarapp/domain/bench/sheet.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { askedFillings, type Filling, inAll, totalMl } from "./fillings.ts";

const UNITS = ["mL", "g"] as const;
const DIGITS = 1;
const MOST_ADDITIONS = 20;

/** Something that is added by the litre: liquids in mL, which take up room, or grams. */
export interface Addition {
  per_l: number;
  unit: (typeof UNITS)[number];
}

function askedAdditions(asked: Asked): Addition[] {
  return asked.parts("additions", MOST_ADDITIONS, "additions").map((row, index) => {
    const part = new Asked(row, ["per_l", "unit"], `additions[${index}].`);
    const unit = part.choice("unit", UNITS, "Liquids by volume, all else by weight.");
    return { per_l: part.number("per_l"), unit };
  });
}

/** RACK-2: the dose of every addition for each container, and the totals to draw. */
export function benchSheet(
  inputs: { containers: Filling[]; additions: Addition[] },
  settings: Settings | null = null,
) {
  const asked = new Asked(inputs, ["containers", "additions"]);
  const work = new Working(settings);
  const fillings = askedFillings(asked);
  const additions = askedAdditions(asked);
  const allMl = work.step("All containers = sum of count x fill", totalMl(fillings), "mL", 0);
  const liquid = additions.reduce((sum, { per_l, unit }) => sum + (unit === "mL" ? per_l : 0), 0);
  work.step("Liquid additions in a litre", liquid, "mL", 3);
  if (liquid > 0) work.caution("additions_inside_fill");
  const dosesIn = (volumeMl: number) =>
    additions.map((addition) => halfUp((addition.per_l * volumeMl) / 1000, DIGITS));
  const rows = fillings.map((filling) => ({
    ...filling,
    doses: dosesIn(filling.volume_ml),
    liquid_ml: halfUp((liquid * filling.volume_ml) / 1000, DIGITS),
    beer_ml: halfUp(filling.volume_ml * (1 - liquid / 1000), DIGITS),
  }));
  return work.done({
    containers: rows,
    totals: additions.map((_, index) =>
      inAll(
        fillings,
        rows.map(({ doses }) => doses[index] ?? 0),
      ),
    ),
    count: fillings.reduce((sum, filling) => sum + filling.count, 0),
    volume_ml: allMl,
    beer_ml: halfUp(allMl * (1 - liquid / 1000), DIGITS),
    dilution_pct: halfUp(liquid / 10, 3),
  });
}
