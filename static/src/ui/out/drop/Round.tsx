// The van's round: in what order to go where, what to load first, and what to expect back.

import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { Button } from "../../parts/Button.tsx";
import { bareHead } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { showWorking } from "../../parts/working.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { count, customerName, listWords, sentence, timeWords } from "../../words.ts";
import { allHoldings } from "../state.ts";
import { begin } from "./begin.ts";
import { madeToday, type Stop, toMake } from "./drops.ts";
import { ReadyElsewhere } from "./ReadyElsewhere.tsx";
import {
  backWords,
  kmWords,
  loadOrder,
  type Round as Planned,
  promisedToday,
  roundOf,
  turnWords,
} from "./round.ts";

const MOST_NAMED = 12;

const nameOf = ({ customer }: { customer: string }): string => customerName(known.value, customer);

const holdingOf = ({ customer }: Stop) =>
  allHoldings.value.find((holding) => holding.customer === customer);

const StopLine = ({ stop, says, of }: { stop: Stop; says: string; of: number }) => (
  <Line
    look={bareHead(String(of))}
    title={nameOf(stop)}
    reason={says}
    href={hrefTo("out", "drop", stop.id)}
  />
);

const whence = ({ from }: Planned): string => (from === null ? "the brewery" : nameOf(from));

const ToDrop = ({ round }: { round: Planned }) => (
  <Lines heading="To drop" count={count(round.turns.length, "stop")}>
    {round.turns.map((turn, n) => (
      <StopLine
        key={turn.stop.id}
        stop={turn.stop}
        says={turnWords(
          turn,
          n === 0 ? whence(round) : null,
          holdingOf(turn.stop),
          known.value.now,
        )}
        of={n + 1}
      />
    ))}
  </Lines>
);

/** How far it is, how that is known, and what to enter so that it can be. */
const Way = ({ round }: { round: Planned }) => {
  const { from, worked, backM, turns } = round;
  if (worked === null) {
    return <p class="told">So many stops are more than one round: they stand by name.</p>;
  }
  const { total_m } = worked.result;
  return (
    <div class="told">
      {total_m > 0 && (
        <p>
          <strong>{kmWords(total_m)} as the crow flies</strong>
          {backM !== null && `, the last ${kmWords(backM)} of it back to the brewery`}. Roads are
          longer.
        </p>
      )}
      {!book.breweries.value.get("brewery")?.fields.map && turns.some(({ placed }) => placed) && (
        <p class="small">
          The round {from === null ? "begins and ends" : "ends"} anywhere until the brewery has its{" "}
          <a href={hrefTo("office", "brewery")}>place on the map</a>.
        </p>
      )}
      {total_m > 0 && (
        <Button onPress={() => showWorking("The way of the round", worked)}>
          How it is worked out
        </Button>
      )}
    </div>
  );
};

/** What is dropped last lies behind everything else. */
const ToLoad = ({ round }: { round: Planned }) => {
  const stops = loadOrder(round.turns, madeToday.value);
  const all = stops.reduce((sum, { numbers }) => sum + numbers.length, 0);
  return stops.length === 0 ? null : (
    <Lines heading="To load, in this order" count={`${count(all, "container")} to load`}>
      {stops.map((stop) => (
        <Line
          key={stop.id}
          title={listWords(stop.numbers, MOST_NAMED)}
          reason={`For ${nameOf(stop)}`}
          href={hrefTo("out", "make-up", stop.id)}
        />
      ))}
    </Lines>
  );
};

const Promised = () => {
  const gone = [...toMake.value, ...madeToday.value];
  const promised = promisedToday(allHoldings.value, gone, known.value.now);
  return promised.length === 0 ? null : (
    <Lines heading="Promised for today, not on the round" count={promised.length}>
      {promised.map((holding) => (
        <Line
          key={holding.customer}
          title={nameOf(holding)}
          reason={backWords(holding, known.value.now)}
          tone="look"
          action={{ label: "Go there", onPress: () => void begin(holding.customer) }}
        />
      ))}
    </Lines>
  );
};

const handedWords = ({ fields }: Stop): string => {
  const { lines = [], empties = [], empties_counted = 0, handed_over_at = "" } = fields;
  const taken = empties.length + empties_counted;
  const when = timeWords(handed_over_at, known.value.now);
  return sentence(`${when}: ${count(lines.length, "container")} left, ${taken} taken along`);
};

const HandedOver = () =>
  madeToday.value.length === 0 ? null : (
    <Lines heading="Handed over today" count={madeToday.value.length}>
      {madeToday.value.map((stop) => (
        <StopLine
          key={stop.id}
          stop={stop}
          says={handedWords(stop)}
          of={(stop.fields.lines ?? []).length}
        />
      ))}
    </Lines>
  );

export const Round = () => {
  useTitle("Round");
  const open = toMake.value;
  const brewery = book.breweries.value.get("brewery");
  const round = roundOf(open, madeToday.value, book.customers.value, brewery);
  return (
    <div class="out">
      {open.length + madeToday.value.length === 0 && (
        <Nothing says="No drop is made up. Make one up for each customer that the van goes to." />
      )}
      {open.length > 0 && (
        <>
          <Way round={round} />
          <ToDrop round={round} />
        </>
      )}
      <Promised />
      <ReadyElsewhere />
      <ToLoad round={round} />
      <HandedOver />
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
