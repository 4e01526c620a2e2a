// How long a lot of finings still lasts, and what that rests on.

import type { Lot } from "../../../domain/records.ts";
import { basisWords, lifeWords, lotLife, lotName } from "../../bench/lots.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { showWorking } from "../../parts/working.ts";
import { type Doc, dateWords, sentence } from "../../words.ts";

const FININGS = ["isinglass", "auxiliary_alginate", "auxiliary_silica"];

export const LotLife = ({ doc }: { doc: Doc }) => {
  const lot = doc as Lot;
  const { now } = known.value;
  if (!FININGS.includes(lot.fields.what ?? "")) return null;
  const worked = lotLife(lot, now, ownFigures.value);
  if (worked === null) {
    return (
      <p class="form small">
        How long it lasts is not known until it says when it was received and the warmest that it
        was kept at.
      </p>
    );
  }
  const { past, use_by } = worked.result;
  return (
    <div class="form">
      <p class={past ? "look" : ""}>
        <strong>{sentence(lifeWords(lot, now, ownFigures.value))}.</strong>
      </p>
      <p>
        It lasts until {dateWords(use_by, now)}, as it was {basisWords(lot, now)}. What its own
        sheet and date say comes first.
      </p>
      <Button onPress={() => showWorking(`The life of ${lotName(lot)}`, worked)}>
        How it is worked out
      </Button>
    </div>
  );
};
