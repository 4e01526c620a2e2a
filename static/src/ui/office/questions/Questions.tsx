// Questions to settle: what is odd in a sentence, and the ways out, each one tap.

import { computed } from "@preact/signals";
import { book, type Saved } from "../../../store/book.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { Nothing } from "../../parts/Nothing.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { save } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { count } from "../../words.ts";
import { type Alike, manyAlike, questions, RULES } from "./open.ts";
import { QuestionCard } from "./QuestionCard.tsx";

export const allQuestions = computed(() => questions(book.containers.value.values()));

/** One after the other, as the book settles them; all are undone together. */
const settleAll = ({ all, label }: Alike): Promise<boolean> =>
  save(`${label}: ${count(all.length, "question")} settled.`, async () => {
    const saved: Saved[] = [];
    for (const { standing, query } of all) {
      saved.push(await book.settle(standing.number, query.id, "right"));
    }
    return saved;
  });

const ManyAlike = ({ alike }: { alike: Alike }) => (
  <li class="question">
    <p>
      <strong>{RULES[alike.rule] ?? "The same question"}</strong>{" "}
      <span class="small">{count(alike.all.length, "container")}</span>
    </p>
    <button type="button" class="button" onClick={() => void settleAll(alike)}>
      All {alike.all.length}: {alike.label}
    </button>
  </li>
);

export const Questions = () => {
  useTitle("Questions to settle");
  const all = allQuestions.value;
  if (all.length === 0) return <Nothing says="Nothing is odd. There is no question to settle." />;
  return (
    <section class="lines">
      <h2>{count(all.length, "question")}</h2>
      <NotMine kind="settled" />
      <ul>
        {(may("settled") ? manyAlike(all, known.value) : []).map((alike) => (
          <ManyAlike key={alike.rule} alike={alike} />
        ))}
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
