// One question: the container, what is odd, and its ways out.

import { useState } from "preact/hooks";
import { isNumber } from "../../../domain/numbers.ts";
import { book } from "../../../store/book.ts";
import { useInView } from "../../cellar/in-view.ts";
import { Field } from "../../parts/Field.tsx";
import { Head } from "../../parts/Head.tsx";
import { headOf } from "../../parts/head-of.ts";
import { save } from "../../parts/say.ts";
import { containerHref } from "../../shell/route.ts";
import { containerName, fullTimeWords, type Known, queryWords } from "../../words.ts";
import { plainNumber } from "../register/numbers.ts";
import type { Question } from "./open.ts";
import { type Way, waysOut } from "./ways.ts";

const wireWay = (way: Way, number: string): string => {
  if (way.is === "right") return "right";
  return way.is === "void" ? `void:${way.target}` : `renumber:${way.target}:${number}`;
};

const WhichNumber = (props: { not: string; onNumber: (number: string) => void }) => {
  const [typed, setTyped] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const give = () => {
    const number = plainNumber(typed);
    if (!isNumber(number)) return setFault("A container's number, such as 119 or K12.");
    if (number === props.not) return setFault(`${number} is the number that it was not.`);
    props.onNumber(number);
  };
  return (
    <form
      ref={useInView<HTMLFormElement>()}
      class="with-button"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        give();
      }}
    >
      <Field
        label="Which number was it?"
        value={typed}
        onValue={setTyped}
        fault={fault}
        maxLength={12}
        capitals
      />
      <button type="submit" class="button main">
        Move it
      </button>
    </form>
  );
};

export const QuestionCard = (props: { question: Question; known: Known }) => {
  const { standing, query } = props.question;
  const [asking, setAsking] = useState<Way | null>(null);
  const settle = (way: Way, number = "") =>
    save(`${standing.number}: settled.`, () =>
      book.settle(standing.number, query.id, wireWay(way, number)),
    );
  const press = (way: Way) => {
    if (way.is === "renumber") setAsking(way.label === asking?.label ? null : way);
    else void settle(way);
  };
  return (
    <li class="question">
      <a class="what" href={containerHref(standing.number)}>
        <Head look={headOf(standing, props.known.now)} />
        <div>
          <p>
            <strong>{containerName(standing)}</strong>{" "}
            <span class="small">{fullTimeWords(query.at, props.known.now)}</span>
          </p>
          <p>{queryWords(query, props.known)}</p>
        </div>
      </a>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring the looks of a form */}
      <div class="ways" role="group" aria-label={`Ways out for ${standing.number}`}>
        {waysOut(query, props.known).map((way) => (
          <button
            type="button"
            class="button"
            key={way.label}
            aria-expanded={way.is === "renumber" ? asking?.label === way.label : undefined}
            onClick={() => press(way)}
          >
            {way.label}
          </button>
        ))}
      </div>
      {asking !== null && (
        <WhichNumber
          key={asking.label}
          not={standing.number}
          onNumber={(number) => void settle(asking, number)}
        />
      )}
    </li>
  );
};
