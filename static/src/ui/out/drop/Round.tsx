// The van's round: what is to be handed over where, what to load, and what to expect back.

import { known } from "../../known.ts";
import { Empty } from "../../parts/Empty.tsx";
import { bareHead } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { count, customerName, listWords, sentence, timeWords } from "../../words.ts";
import { heldBy, madeToday, type Stop, toMake } from "./drops.ts";

const MOST_NAMED = 6;

const toDropWords = ({ customer, numbers }: Stop): string => {
  const held = heldBy(customer).filter((number) => !numbers.includes(number)).length;
  const back = held === 0 ? "none of ours there" : `${count(held, "container")} of ours there`;
  return sentence(`${listWords(numbers, MOST_NAMED) || "nothing yet"}; ${back}`);
};

const handedWords = ({ fields }: Stop): string => {
  const { lines = [], empties = [], empties_counted = 0, handed_over_at = "" } = fields;
  const taken = empties.length + empties_counted;
  const when = timeWords(handed_over_at, known.value.now);
  return sentence(`${when}: ${count(lines.length, "container")} left, ${taken} taken along`);
};

const StopLine = ({ stop, says }: { stop: Stop; says: string }) => (
  <Line
    look={bareHead(String((stop.fields.lines ?? stop.numbers).length))}
    title={customerName(known.value, stop.customer)}
    reason={says}
    href={hrefTo("out", "drop", stop.id)}
  />
);

export const Round = () => {
  useTitle("Round");
  const open = toMake.value;
  const made = madeToday.value;
  const load = open.reduce((sum, { numbers }) => sum + numbers.length, 0);
  return (
    <div class="out">
      {open.length + made.length === 0 && (
        <Empty says="No drop is made up. Make one up for each customer that the van goes to." />
      )}
      {open.length > 0 && (
        <Lines heading="To drop" count={`${count(load, "container")} to load`}>
          {open.map((stop) => (
            <StopLine key={stop.id} stop={stop} says={toDropWords(stop)} />
          ))}
        </Lines>
      )}
      {made.length > 0 && (
        <Lines heading="Handed over today" count={made.length}>
          {made.map((stop) => (
            <StopLine key={stop.id} stop={stop} says={handedWords(stop)} />
          ))}
        </Lines>
      )}
      <div class="dock">
        <a class="button main" href={hrefTo("out", "make-up")}>
          Make up a drop
        </a>
        <a class="button" href={hrefTo("out", "back")}>
          Came back
        </a>
      </div>
    </div>
  );
};
