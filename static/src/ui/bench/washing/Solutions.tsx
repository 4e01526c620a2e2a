// The solutions that stand about: which one is washed with, how it stands, its checks and its end.

import { useState } from "preact/hooks";
import { titration } from "../../../domain/bench/solution.ts";
import { DomainError } from "../../../domain/errors.ts";
import type { Solution } from "../../../domain/records.ts";
import { halfUpWhole } from "../../../domain/rounding.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Field } from "../../parts/Field.tsx";
import { More } from "../../parts/More.tsx";
import { save, say } from "../../parts/say.ts";
import { goOnTo, hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { solutionId } from "../state.ts";
import { MakeUp } from "./MakeUp.tsx";
import { decimal } from "./making.ts";
import { inUse, solutionWords } from "./solution.ts";

const Check = ({ id, solution }: { id: string; solution: Solution }) => {
  const [titrant, setTitrant] = useState("");
  const [normality, setNormality] = useState("");
  const [sample, setSample] = useState("");
  const keep = async () => {
    try {
      const { result } = titration({
        titrated: solution.fields.agent ?? "peracetic",
        titrant_ml: decimal(titrant),
        normality: decimal(normality),
        titration_sample_ml: decimal(sample),
      });
      const facts = { strength_mg_per_l: halfUpWhole(result.strength_mg_per_l) };
      const text = `Checked: ${facts.strength_mg_per_l} mg/L.`;
      await save(text, () => book.record("solution_checked", id, facts));
    } catch (fault) {
      if (!(fault instanceof DomainError)) throw fault;
      say.trouble("All three figures of the titration are needed, and within reason.");
    }
  };
  return (
    <More label="Check by titration">
      <div class="form">
        <Field label="Titrant used, mL" type="decimal" value={titrant} onValue={setTitrant} />
        <Field label="Normality" type="decimal" value={normality} onValue={setNormality} />
        <Field label="Sample, mL" type="decimal" value={sample} onValue={setSample} />
        <Button onPress={() => void keep()}>Keep the check</Button>
      </div>
    </More>
  );
};

const One = ({ id, solution }: { id: string; solution: Solution }) => {
  const { says, tone } = solutionWords(solution, known.value, ownFigures.value);
  const name = solution.fields.name ?? "Solution";
  const chosen = solutionId.value === id;
  return (
    <section class="question">
      <div>
        <p>
          <strong>{name}</strong>
          {chosen && ", washed with now"}
        </p>
        <p class={tone ?? "small"}>{says}</p>
      </div>
      <div class="buttons">
        {!chosen && (
          <Button
            label={`Wash with ${name}`}
            onPress={() => {
              solutionId.value = id;
              goOnTo("bench");
            }}
          >
            Wash with it
          </Button>
        )}
        <Button
          onPress={() =>
            void save(`${name} thrown away.`, () =>
              book.record("solution", id, { thrown_away: true }),
            )
          }
        >
          Thrown away
        </Button>
      </div>
      <Check id={id} solution={solution} />
    </section>
  );
};

const Solutions = ({ path }: { path: readonly string[] }) => {
  useTitle("Solutions");
  if (path[1] === "new") return <MakeUp />;
  return (
    <>
      <div class="form">
        <a class="button main wide" href={hrefTo("bench", "solutions", "new")}>
          Make up a solution
        </a>
      </div>
      {inUse(book.solutions.value).map(([id, solution]) => (
        <One key={id} id={id} solution={solution} />
      ))}
      <div class="form">
        <a class="button" href={hrefTo("bench")}>
          To the pad
        </a>
      </div>
    </>
  );
};

export default Solutions;
