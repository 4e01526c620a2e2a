// Questions to settle: what is odd in a sentence, and the ways out, each one tap.

import { computed } from "@preact/signals";
import { book } from "../../../store/book.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { Empty } from "../../parts/Empty.tsx";
import { useTitle } from "../../shell/title.ts";
import { count } from "../../words.ts";
import { QuestionCard } from "./QuestionCard.tsx";
import { questions } from "./ways.ts";

export const allQuestions = computed(() => questions(book.containers.value.values()));

export const Questions = () => {
  useTitle("Questions to settle");
  const all = allQuestions.value;
  if (all.length === 0) return <Empty says="Nothing is odd. There is no question to settle." />;
  return (
    <section class="lines">
      <h2>
        {count(all.length, "question")} <span>work goes on all the same</span>
      </h2>
      <ul>
        <Slices
          items={all}
          size={10}
          each={(question) => (
            <QuestionCard
              key={`${question.standing.number} ${question.query.id}`}
              question={question}
              known={known.value}
            />
          )}
        />
      </ul>
    </section>
  );
};
