// Before somebody comes in again: what waits on the phone is safe, and goes then.

import { book } from "../../store/book.ts";
import { count } from "../words.ts";

export const WaitingHere = () => {
  const waiting = book.waiting.value.count;
  return waiting === 0 ? null : (
    <p>
      {count(waiting, "entry waits", "entries wait")} on this phone. Nothing of it is lost: it goes
      to the brewery as soon as you are in.
    </p>
  );
};
