/** Which finings may go in now. Twin of cellarapp/domain/bench/finings_order.py. */
import type { Settings } from "../figures.ts";
import { Asked } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";

export const PRODUCTS = ["isinglass", "auxiliary_alginate", "auxiliary_silica"] as const;
const PRODUCT_WHY = "Isinglass, or auxiliary finings by what they are made of.";
const VEGAN_WHY = "Whether the beer is sold as vegan.";
const MOST_EARLIER = 50;

export type Finings = (typeof PRODUCTS)[number];

/** Finings that went in earlier. */
export interface Added {
  product: Finings;
  minutes_ago: number;
}

/** `mixed_with` names the finings already in the dosing vessel, if any. */
export interface FiningsOrderInputs {
  product: Finings;
  vegan: boolean;
  earlier: Added[];
  mixed_with?: Finings | null;
}

/** Why a product must not go in now. */
export type AgainstFinings =
  | "vegan_beer"
  | "one_vessel"
  | "auxiliary_after_isinglass"
  | "too_soon_after_alginate";

function askedEarlier(asked: Asked): Added[] {
  return asked.parts("earlier", MOST_EARLIER, "additions").map((row, index) => {
    const part = new Asked(row, ["product", "minutes_ago"], `earlier[${index}].`);
    const product = part.choice("product", PRODUCTS, PRODUCT_WHY);
    return { product, minutes_ago: part.number("minutes_ago") };
  });
}

/** Minutes until isinglass may follow alginate auxiliary; none for anything else. */
export function waitMin(work: Working, product: Finings, earlier: readonly Added[]): number {
  const since = earlier
    .filter((added) => added.product === "auxiliary_alginate")
    .map((added) => added.minutes_ago);
  if (product !== "isinglass" || since.length === 0) return 0;
  const interval = work.figure("alginate_interval_h") * 60;
  const says = "Wait = interval after alginate auxiliary - minutes since";
  return work.step(says, Math.max(0, interval - Math.min(...since)), "min", 0);
}

const isFined = (earlier: readonly Added[]): boolean =>
  earlier.some((added) => added.product === "isinglass");

/** Every reason why this product must not go in now. */
function against(
  asked: Asked,
  product: Finings,
  earlier: readonly Added[],
  wait: number,
): AgainstFinings[] {
  const reasons: AgainstFinings[] = [];
  if (product === "isinglass" && asked.flag("vegan", VEGAN_WHY)) reasons.push("vegan_beer");
  if (asked.has("mixed_with")) {
    const other = asked.choice("mixed_with", PRODUCTS, PRODUCT_WHY);
    if ((other === "isinglass") !== (product === "isinglass")) reasons.push("one_vessel");
  }
  if (product === "auxiliary_alginate" && isFined(earlier)) {
    reasons.push("auxiliary_after_isinglass");
  }
  if (wait > 0) reasons.push("too_soon_after_alginate");
  return reasons;
}

/** FINE-3: whether this product may go in now, and if not why, and how long to wait. */
export function finingsOrder(inputs: FiningsOrderInputs, settings: Settings | null = null) {
  const asked = new Asked(inputs, ["product", "vegan", "earlier", "mixed_with"]);
  const work = new Working(settings);
  const product = asked.choice("product", PRODUCTS, PRODUCT_WHY);
  const vegan = asked.flag("vegan", VEGAN_WHY);
  const earlier = askedEarlier(asked);
  const wait = waitMin(work, product, earlier);
  const reasons = against(asked, product, earlier, wait);
  work.caution("never_fine_fermenting");
  work.caution("two_vessels");
  const fined = isFined(earlier);
  if (product === "isinglass" && fined) work.caution("refining_at_half");
  if (product === "auxiliary_silica") work.caution("silica_by_trial");
  return work.done({
    allowed: reasons.length === 0,
    because: reasons,
    wait_min: halfUp(wait, 0),
    still_vegan: vegan && !fined && product !== "isinglass",
  });
}
