/** LOT: the lot mark: what was racked from one gyle on one day. Twin of cellarapp/domain/cellar/lot.py. */
import type { Settings } from "../figures.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { FORMS } from "./date-mark.ts";
import { sayDay } from "./times.ts";

const GYLE_NUMBER = "[A-Za-z0-9][A-Za-z0-9 ./-]{0,19}";
const GYLE_NUMBER_WHY =
  "A gyle's number: up to twenty letters, digits, blanks, dots, strokes, hyphens.";
const DATED = [...FORMS, "none"] as const;
const DATED_WHY = "How the date stands on the container, or that none does.";

export interface LotMarkInputs {
  gyle_number: string;
  racked_on: string;
  dated?: (typeof DATED)[number] | null;
}

/** LOT-1: L, the gyle, and the day of racking; printed even where the date would do. */
export function lotMark(inputs: LotMarkInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["gyle_number", "racked_on", "dated"]);
  const work = new Working(settings);
  const gyle = asked.words("gyle_number", GYLE_NUMBER, GYLE_NUMBER_WHY);
  const rackedOn = asked.day("racked_on");
  const dated = asked.has("dated") ? asked.choice("dated", DATED, DATED_WHY) : "none";
  const code = gyle.replaceAll(" ", "").toUpperCase();
  const day = `${rackedOn.slice(8)}${rackedOn.slice(5, 7)}${rackedOn.slice(2, 4)}`;
  const says = `Lot = L, the gyle's number, the day of racking: ${sayDay(rackedOn)}`;
  work.step(says, 1, "lot", 0);
  work.caution("check_food_law");
  return work.done({
    mark: `${work.figure("lot_mark_prefix")}${code}-${day}`,
    must_be_shown: dated !== "day_month_year" && dated !== "day_month",
  });
}
