// What a step has to know first, asked right under its line: which spile, which place.

import { book } from "../../store/book.ts";
import { ownFigures } from "../own-figures.ts";
import { useInView } from "../parts/in-view.ts";
import { containerHref, hrefTo } from "../shell/route.ts";
import { move, stillage, vent } from "./deed.ts";
import { movesWords } from "./moves.ts";
import { placesFor, placesToMoveTo } from "./places.ts";
import { type Asking, asking } from "./state.ts";

interface Answer {
  label: string;
  give: () => Promise<boolean>;
}

const answersTo = ({ number, what }: Asking): Answer[] => {
  switch (what) {
    case "vent":
      return [
        { label: "Soft spile", give: () => vent(number, "soft") },
        { label: "Hard spile", give: () => vent(number, "hard") },
      ];
    case "stillage":
      return placesFor(book.places.value, "stillage").map((place) => ({
        label: place.name,
        give: () => stillage(number, place.id),
      }));
    case "move": {
      const from = book.containers.value.get(number)?.place?.at ?? null;
      return placesToMoveTo(book.places.value, from).map((place) => ({
        label: place.name,
        give: () => move(number, place),
      }));
    }
  }
};

/** Before it is moved: whether fined beer is trusted to settle after. */
const Moves = ({ number }: { number: string }) => {
  const standing = book.containers.value.get(number);
  const { says, tone } = standing ? movesWords(standing, ownFigures.value) : NOTHING;
  return says === "" ? null : <p class={tone || "small"}>{says}</p>;
};

const NOTHING = { says: "", tone: "" } as const;

const QUESTION = { vent: "Vent with which spile?", move: "Move where?", stillage: "Which one?" };

export const Ask = (props: { asked: Asking }) => {
  const { asked } = props;
  const answers = answersTo(asked);
  const give = async (answer: Answer) => {
    if (await answer.give()) asking.value = null;
  };
  return (
    <li class="asked opened" ref={useInView<HTMLLIElement>()}>
      <p id={`ask-${asked.number}`}>{QUESTION[asked.what]}</p>
      {asked.what !== "vent" && <Moves number={asked.number} />}
      {answers.length === 0 && (
        <p class="small">
          No other place is entered. <a href={hrefTo("office", "places")}>Enter places</a>
        </p>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring the looks of a form */}
      <div class="buttons" role="group" aria-labelledby={`ask-${asked.number}`}>
        {answers.map((answer) => (
          <button type="button" class="button" key={answer.label} onClick={() => void give(answer)}>
            {answer.label}
          </button>
        ))}
        <a class="button quiet" href={containerHref(asked.number)}>
          Something else
        </a>
      </div>
    </li>
  );
};
