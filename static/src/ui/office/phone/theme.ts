// Slate, board, or as the phone has it. The style sheet does the rest by one attribute of the page.

import { effect } from "@preact/signals";
import { atHand } from "../../at-hand.ts";

export type Theme = "" | "slate" | "board";

/** At hand and not in the book: the page is not to be drawn in one look and then in the other. */
export const theme = atHand<Theme>("theme", "");

/** Called once at the start; from then on the page looks as was chosen. */
export const followTheme = (): void => {
  effect(() => {
    const page = document.documentElement;
    if (theme.value === "") delete page.dataset["theme"];
    else page.dataset["theme"] = theme.value;
  });
};
