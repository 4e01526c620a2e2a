// Which lot is noted with each dose from now on, and the end of one.

import type { Dose } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { ownFigures } from "../own-figures.ts";
import { Button } from "../parts/Button.tsx";
import { Choice } from "../parts/Choice.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { save } from "../parts/say.ts";
import { formAndBack, hrefTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { addedWords } from "../words/entries.ts";
import { sentence } from "../words.ts";
import { basisWords, isPast, lifeWords, liveLots, lotName, NO_LOT } from "./lots.ts";
import { chosenLots, usedLots } from "./lots-used.ts";

type Added = Dose["what"];
const ADDED: readonly Added[] = [
  "primings",
  "auxiliary_alginate",
  "auxiliary_silica",
  "isinglass",
  "hops",
];

const Used = ({ id }: { id: string }) => {
  const lot = book.lots.value.get(id);
  if (lot === undefined) return null;
  const { now } = known.value;
  const words = [lifeWords(lot, now, ownFigures.value), basisWords(lot, now)].filter(Boolean);
  const name = lotName(lot);
  return (
    <>
      {words.length > 0 && (
        <p class={isPast(lot, now, ownFigures.value) ? "look" : "small"}>
          {sentence(words.join(": "))}.
        </p>
      )}
      {may("lot") && (
        <Button
          label={`${name} is used up`}
          onPress={() =>
            save(`${name} is used up.`, () => book.record("lot", id, { retired: true }))
          }
        >
          {name} is used up
        </Button>
      )}
    </>
  );
};

const One = ({ what }: { what: Added }) => {
  const used = usedLots.value[what];
  const options = [
    ...liveLots(book.lots.value, what).map(([value, lot]) => ({ value, label: lotName(lot) })),
    { value: NO_LOT, label: "Not noted" },
  ];
  return (
    <>
      <Choice
        label={sentence(addedWords(what))}
        options={options}
        value={used ?? NO_LOT}
        onValue={(value) => {
          chosenLots.value = { ...chosenLots.peek(), [what]: value };
        }}
      />
      {used !== undefined && <Used id={used} />}
    </>
  );
};

const ChooseLots = () => {
  useTitle("Lots in use");
  const live = ADDED.filter((what) => liveLots(book.lots.value, what).length > 0);
  if (live.length === 0) {
    return (
      <Nothing says="No lot is on record. A lot entered in the Office is noted with each dose.">
        <a class="button main" href={formAndBack("lots", "new")}>
          Enter a lot
        </a>
      </Nothing>
    );
  }
  return (
    <div class="form">
      {live.map((what) => (
        <One key={what} what={what} />
      ))}
      <a class="button main wide" href={hrefTo("bench")}>
        To the pad
      </a>
      <a class="button" href={formAndBack("lots", "new")}>
        Enter a new lot
      </a>
    </div>
  );
};

export default ChooseLots;
