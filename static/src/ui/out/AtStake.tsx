// What a call to one customer is worth, and which of its containers are to be reckoned lost.

import { book } from "../../store/book.ts";
import { once } from "../cellar/deed.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { showWorking } from "../parts/working.ts";
import { containerHref } from "../shell/route.ts";
import { count, customerName } from "../words.ts";
import { chanceWords, stakeWords } from "./call-words.ts";
import type { Worth } from "./calls.ts";
import type { Away, Holding } from "./holdings.ts";
import { awayTitle } from "./reasons.ts";

export const AtStake = ({ holding, worth }: { holding: Holding; worth: Worth }) => {
  if (worth.result.late === 0) return null;
  const title = `A call to ${customerName(known.value, holding.customer)}`;
  return (
    <div class="told">
      <p>
        <strong>{stakeWords(worth)}</strong>
      </p>
      <p>{chanceWords(worth)}</p>
      <Button onPress={() => showWorking(title, worth)}>How it is worked out</Button>
    </div>
  );
};

const putDown = ({ standing, days }: Away): void => {
  const { number } = standing;
  const why = `out ${count(days, "day")}, not back after asking`;
  void once(number, `${number} is down as missing.`, () => book.record("missing", number, { why }));
};

/**
 * Proposed and never done by itself: only a person knows what was said on the telephone. What the
 * customer says is empty is there.
 */
export const ProposeMissing = ({ holding, worth }: { holding: Holding; worth: Worth }) => {
  const proposed = holding.away.filter(
    ({ standing, trip }, n) =>
      worth.result.out[n]?.propose_missing && standing.held === null && trip.told?.says !== "empty",
  );
  return proposed.length === 0 || !may("missing") ? null : (
    <Lines heading="Put down as missing?" count={proposed.length}>
      {proposed.map((away) => (
        <Line
          key={away.standing.number}
          look={headOf(away.standing, known.value.now)}
          title={awayTitle(away)}
          reason={`Out ${count(away.days, "day")}: hardly any come back after that. It stays with this customer until it is found.`}
          href={containerHref(away.standing.number)}
          action={{ label: "Missing", onPress: () => putDown(away) }}
        />
      ))}
    </Lines>
  );
};
