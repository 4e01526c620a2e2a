// What happens when the button of a job is pressed.

import type { JobStep } from "../../domain/cellar/jobs.ts";
import { timeWords } from "../words.ts";
import { deed, tap, vent } from "./deed.ts";
import { takeStillage } from "./take-step.ts";

export const takeJob = (number: string, step: JobStep): void => {
  switch (step) {
    case "stillage":
      takeStillage(number, "job");
      break;
    case "vent":
      void vent(number, "soft");
      break;
    case "spile":
      void vent(number, "hard");
      break;
    case "tap":
      void tap(number);
      break;
    case "taste":
      void deed(number, `${number} tastes good.`, "checked", { taste: "good" });
      break;
    default: {
      const forgotten: never = step;
      throw new Error(`unhandled ${String(forgotten)}`);
    }
  }
};

export const pick = (number: string, saleAt: string, now: string): Promise<boolean> =>
  deed(number, `${number} is picked for ${timeWords(saleAt, now)}.`, "planned", {
    sale_at: saleAt,
  });

export const takeBack = (number: string): Promise<boolean> =>
  deed(number, `${number} is not picked any more.`, "planned", { sale_at: null });
