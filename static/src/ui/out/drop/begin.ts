// One drop for a customer at a time: what is added later goes with it.

import { londonDate } from "../../../domain/calendar.ts";
import { book, phone } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { save } from "../../parts/say.ts";
import { goOnTo } from "../../shell/route.ts";
import { customerName } from "../../words.ts";
import { toMake } from "./drops.ts";

export const begin = async (customer: string): Promise<void> => {
  const there = toMake.peek().find((stop) => stop.customer === customer);
  const id = there?.id ?? phone.newId();
  if (there === undefined) {
    const facts = { customer, on: londonDate(book.now()), numbers: [] };
    const name = customerName(known.peek(), customer);
    if (!(await save(`A drop for ${name} is begun.`, () => book.record("drop", id, facts)))) return;
  }
  goOnTo("out", "make-up", id);
};
