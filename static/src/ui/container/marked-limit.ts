// The working pressure marked on a container, as somebody types it.

import { RANGES } from "../../domain/inputs.ts";

/** Bar as typed in thousandths of a bar, or what is wrong with it, in words. */
export const readLimit = (typed: string): number | string => {
  const { low, high } = RANGES.limit_bar;
  const clean = typed.trim().replace(",", ".");
  const bar = /^\d{1,2}(\.\d{1,3})?$/.test(clean) ? Number(clean) : 0;
  return bar >= low && bar <= high
    ? Math.floor(bar * 1000 + 0.5)
    : `Bar from ${low} to ${high}, as 3.5.`;
};
