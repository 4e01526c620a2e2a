// Opens the panel that shows how a figure was worked out. The panel and the sources of all figures
// are fetched when first asked for; everything stands on the phone, so that works offline too.

import type { ComponentType } from "preact";
import type { Worked } from "../../domain/working.ts";
import { say } from "./say.ts";

export type AnyWorked = Worked<unknown>;

export const showWorking = (title: string, ...worked: readonly AnyWorked[]): void =>
  showUnder(null, title, ...worked);

/** The same, with something above it that a person decides about the figure. */
export const showUnder = (
  Decide: ComponentType | null,
  title: string,
  ...worked: readonly AnyWorked[]
): void => {
  import("./Working.tsx").then(
    (panel) => panel.open(title, worked, Decide),
    () => say.trouble("How it is worked out is not on this phone yet. It comes with a signal."),
  );
};
