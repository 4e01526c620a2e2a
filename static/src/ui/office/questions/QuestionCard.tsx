// One question: the container, what is odd, and its ways out.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { WhichNumber } from "../../container/WhichNumber.tsx";
import { may } from "../../mine.ts";
import { Head } from "../../parts/Head.tsx";
import { headOf } from "../../parts/head-of.ts";
import { useInView } from "../../parts/in-view.ts";
import { save } from "../../parts/say.ts";
import { containerHref } from "../../shell/route.ts";
import { containerName, fullTimeWords, type Known, queryWords } from "../../words.ts";
import type { Question } from "./open.ts";
import { type Way, waysOut } from "./ways.ts";

const wireWay = (way: Way, number: string): string => {
  if (way.is === "right") return "right";
  return way.is === "void" ? `void:${way.target}` : `renumber:${way.target}:${number}`;
};

const Opened = ({ children }: { children: ComponentChildren }) => (
  <div class="settling opened" ref={useInView<HTMLDivElement>()}>
    {children}
  </div>
);

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
        {(may("settled") ? waysOut(query, props.known) : []).map((way) => (
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
        <Opened key={asking.label}>
          <WhichNumber
            wrong={standing.number}
            onNumber={(number) => settle(asking, number)}
            onLeave={() => setAsking(null)}
          />
        </Opened>
      )}
    </li>
  );
};
