/** SALE: the clock after tapping. Twin of cellarapp/domain/cellar/on_sale.py. */
import type { Settings } from "../figures.ts";
import { Working } from "../working.ts";
import { CellarAsked, type Shape } from "./asked.ts";
import { afterDays, daysOnSale } from "./days.ts";
import { sayAt } from "./times.ts";

export interface OffByInputs {
  tapped_at: string;
  shape: Shape;
  first_drawn_at?: string | null;
  on_sale_days?: number | null;
}

/** SALE-3: when it is to be taken off; where the first draw is not known tapping stands for it. */
export function offBy(inputs: OffByInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["tapped_at", "first_drawn_at", "shape", "on_sale_days"]);
  const work = new Working(settings);
  const tappedAt = asked.instant("tapped_at");
  const shape = asked.shape();
  const since = asked.maybeInstant("first_drawn_at", tappedAt, "Not before it was tapped.");
  const days = daysOnSale(work, shape, asked.maybeNumber("on_sale_days"));
  const offAt = afterDays(since ?? tappedAt, days);
  const says = `Off by = ${since ? "first draw" : "tapping"} ${sayAt(since ?? tappedAt)} + days`;
  work.step(`${says}: ${sayAt(offAt)}`, days, "days", 0);
  return work.done({
    off_by_at: offAt,
    on_sale_days: days,
    counted_from: since ? "first_draw" : "tapping",
  });
}
