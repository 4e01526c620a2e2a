// What the readings speak for and why; a person sets the beer's rates from it.

import type { Trial } from "../../../domain/records.ts";
import { book } from "../../../store/book.ts";
import { may } from "../../mine.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { save } from "../../parts/say.ts";
import { showWorking } from "../../parts/working.ts";
import { areRatesOf, proposalWords, ratesOf } from "./proposal.ts";

export const Proposed = ({ trial, beer }: { trial: Trial; beer: string }) => {
  const proposal = proposalWords(trial, ownFigures.value);
  const fields = book.beers.value.get(beer)?.fields ?? {};
  const name = fields.name ?? "the beer";
  if (proposal === null) return null;
  const { dose, says, why, worked } = proposal;
  const rates = dose && ratesOf(dose, trial);
  const cannot =
    fields.vegan && (dose?.isinglass_pt ?? 0) > 0
      ? `${name} is sold as vegan: no isinglass.`
      : null;
  return (
    <section class="question" aria-label="What the readings speak for">
      <div aria-live="polite">
        <p>
          <strong>{says}</strong>
        </p>
        {why.map((words) => (
          <p key={words} class="small">
            {words}
          </p>
        ))}
        {rates && areRatesOf(fields, rates) && <p class="fine">These are {name}'s rates now.</p>}
      </div>
      <div class="buttons">
        {rates && !areRatesOf(fields, rates) && may("beer") && (
          <Button
            look="main"
            cannot={cannot}
            onPress={() =>
              void save(`${name} is fined by this trial from now on.`, () =>
                book.record("beer", beer, rates),
              )
            }
          >
            Set {name} to this
          </Button>
        )}
        <Button onPress={() => showWorking("What the readings speak for", worked)}>
          How it is worked out
        </Button>
      </div>
    </section>
  );
};
