/** Days that a beer, its container or the brewery sets. Twin of cellarapp/domain/cellar/days.py. */
import { sameTimeAfter } from "../calendar.ts";
import type { FigureId } from "../figures.ts";
import type { Working } from "../working.ts";
import type { Shape } from "./asked.ts";

const WINDOWS: readonly FigureId[] = [
  "window_under_4_days",
  "window_4_to_5_days",
  "window_over_5_days",
  "window_over_7_days",
];
const ON_SALE: Record<Shape, FigureId> = { cask: "on_sale_days", keg: "keg_on_sale_days" };

/** SHELF-1: a beer's own window; a keg's; or the one for its strength; or any beer's. */
export function windowDays(
  work: Working,
  shape: Shape | null,
  abvTenths: number | null,
  ownDays: number | null,
): number {
  if (ownDays !== null) return work.step("Window: the beer's own", ownDays, "days", 0);
  let name: FigureId = "best_before_days";
  let says = "Window: of a beer whose strength is not known";
  if (shape === "keg") {
    name = "keg_window_days";
    says = "Window: in a keg";
  } else if (abvTenths !== null) {
    const classes = work.settingList("strength_classes");
    name = WINDOWS[classes.filter((upTo) => abvTenths / 10 > upTo).length] ?? name;
    says = `Window: of a cask of ${Math.floor(abvTenths / 10)}.${abvTenths % 10} % vol`;
  }
  return work.step(says, Math.floor(work.setting(name)), "days", 0);
}

/** COND-1: the beer's own days, or the brewery's. */
export const daysToCondition = (work: Working, ownDays: number | null): number =>
  ownDays ?? Math.floor(work.setting("conditioning_days"));

/** SALE-1: the beer's own days, or those of its kind of container. */
export const daysOnSale = (work: Working, shape: Shape, ownDays: number | null): number =>
  ownDays ?? Math.floor(work.setting(ON_SALE[shape]));

/** COND-2, SALE-2: the same time on a London clock so many days later. */
export const afterDays = (sinceAt: string, days: number): string => sameTimeAfter(sinceAt, days);
