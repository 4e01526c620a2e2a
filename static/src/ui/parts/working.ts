// Opens the panel that shows how a figure was worked out. The panel and the sources of all figures
// are fetched when first asked for; everything stands on the phone, so that works offline too.

import type { Worked } from "../../domain/working.ts";
import { say } from "./say.ts";

export type AnyWorked = Worked<unknown>;

/** What the panel lets a person decide about the figure: whether it is given at all. */
export interface Switch {
  label: string;
  on: () => boolean;
  turn: (on: boolean) => void;
}

export const showWorking = (title: string, ...worked: readonly AnyWorked[]): void =>
  showWithSwitch(null, title, ...worked);

export const showWithSwitch = (
  decide: Switch | null,
  title: string,
  ...worked: readonly AnyWorked[]
): void => {
  import("./Working.tsx").then(
    (panel) => panel.open(title, worked, decide),
    () => say.trouble("How it is worked out is not on this phone yet. It comes with a signal."),
  );
};
