// What happens when the button of a line is pressed: the step is recorded, or asked about first.

import { book } from "../../store/book.ts";
import { goTo } from "../shell/route.ts";
import { stillage, tap, vent } from "./deed.ts";
import type { Next } from "./next.ts";
import { placesFor } from "./places.ts";
import { type Asking, asking } from "./state.ts";

const ask = (number: string, what: Asking["what"], under: Asking["under"]): void => {
  const open = asking.peek();
  const same = open?.number === number && open.what === what && open.under === under;
  // Pressed again it closes: the way back is where the finger is.
  asking.value = same ? null : { number, what, under };
};

export const takeStillage = (number: string, under: Asking["under"]): void => {
  const [first, second] = placesFor(book.places.peek(), "stillage");
  if (second !== undefined) ask(number, "stillage", under);
  else void stillage(number, first?.id);
};

export const takeStep = (number: string, next: Next): void => {
  switch (next) {
    case "move":
    case "vent":
      ask(number, next, "line");
      break;
    case "stillage":
      takeStillage(number, "line");
      break;
    case "hard":
      void vent(number, "hard");
      break;
    case "tap":
      void tap(number);
      break;
    case "bar":
      goTo("bar");
      break;
    case "decide":
      goTo("c", number);
      break;
    default: {
      const forgotten: never = next;
      throw new Error(`unhandled ${String(forgotten)}`);
    }
  }
};
