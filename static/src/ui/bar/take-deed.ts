// What happens when a button of a line at the Bar is pressed.

import { deed, tap, vent } from "../cellar/deed.ts";
import type { Deed } from "./deeds.ts";
import { dipping, takingOff } from "./state.ts";

export const takeDeed = (number: string, what: Deed): void => {
  switch (what) {
    case "tap":
      void tap(number);
      break;
    case "soft":
    case "hard":
      void vent(number, what);
      break;
    case "dip":
      dipping.value = { number, typed: "" };
      break;
    case "stoop":
      void deed(number, `${number} is tilted.`, "stooped", {});
      break;
    case "off":
      takingOff.value = takingOff.peek() === number ? null : number;
      break;
    default: {
      const forgotten: never = what;
      throw new Error(`unhandled ${String(forgotten)}`);
    }
  }
};

export const takeOff = async (number: string, why: string): Promise<void> => {
  if (await deed(number, `${number} is off: ${why}.`, "emptied", { why })) takingOff.value = null;
};
