/** A made-up solution: titration and log. Twin of cellarapp/domain/bench/solution.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";

const TITRATED = ["peracetic", "caustic"] as const;

export interface TitrationInputs {
  titrated: (typeof TITRATED)[number];
  titrant_ml: number;
  normality: number;
  titration_sample_ml: number;
}

/** WASH-3: strength by titration: peracetic acid with thiosulphate, caustic with acid. */
export function titration(inputs: TitrationInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["titrated", "titrant_ml", "normality", "titration_sample_ml"]);
  const work = new Working(settings);
  const titrated = asked.choice("titrated", TITRATED, "What the sample holds.");
  const used = asked.number("titrant_ml");
  const normality = asked.number("normality");
  const equivalent =
    titrated === "peracetic"
      ? work.figure("paa_titration_equivalent_g")
      : work.figure("molar_masses_g").naoh;
  const mg = (used * normality * equivalent * 1000) / asked.number("titration_sample_ml");
  work.step("Strength = titrant mL x e x N x 1000 / sample mL, e one equivalent", mg, "mg/L", 1);
  return work.done({ strength_mg_per_l: halfUp(mg, 1), strength_pct_w_v: halfUp(mg / 1e4, 4) });
}

/** The log of a solution; a sheet or the brewery may set how often and how long it is used. */
export interface SolutionStateInputs {
  made_mg_per_l: number;
  last_check_mg_per_l?: number | null;
  least_mg_per_l: number;
  uses: number;
  hours_old: number;
  thrown_away: boolean;
  most_uses?: number | null;
  most_hours?: number | null;
}

export type AgainstSolution = "thrown_away" | "too_weak" | "used_up" | "too_old";

/** Every reason why the solution must not be used any more. */
function against(asked: Asked): AgainstSolution[] {
  const reasons: AgainstSolution[] = [];
  if (asked.flag("thrown_away", "Whether it has been thrown away.")) reasons.push("thrown_away");
  const last = asked.has("last_check_mg_per_l") ? "last_check_mg_per_l" : "made_mg_per_l";
  if (asked.number(last) < asked.number("least_mg_per_l")) reasons.push("too_weak");
  if (asked.has("most_uses") && asked.number("uses") >= asked.number("most_uses")) {
    reasons.push("used_up");
  }
  if (asked.has("most_hours") && asked.number("hours_old") >= asked.number("most_hours")) {
    reasons.push("too_old");
  }
  return reasons;
}

/** WASH-4: whether a made-up solution may be used once more, and if not why. */
export function solutionState(inputs: SolutionStateInputs, settings: Settings | null = null) {
  const fields = ["made_mg_per_l", "last_check_mg_per_l", "least_mg_per_l", "uses", "hours_old"];
  const asked = new Asked(inputs, [...fields, "thrown_away", "most_uses", "most_hours"]);
  const work = new Working(settings);
  const made = asked.number("made_mg_per_l");
  const uses = asked.number("uses");
  const hoursOld = asked.number("hours_old");
  let lost: number | null = null;
  if (asked.has("last_check_mg_per_l")) {
    lost = (1 - asked.number("last_check_mg_per_l") / made) * 100;
    work.step("Lost since made = 1 - checked / made", lost, "%", 1);
  } else {
    work.caution("solution_not_checked");
  }
  const reasons = against(asked);
  if (reasons.length > 0) work.caution("make_up_anew");
  return work.done({
    usable: reasons.length === 0,
    because: reasons,
    lost_pct: lost === null ? null : halfUp(lost, 1),
    uses,
    hours_old: halfUp(hoursOld, 1),
  });
}
