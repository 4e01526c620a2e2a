// The questions of one deed, in place under its button.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Facts } from "../../domain/entries.ts";
import type { Standing } from "../../domain/standing.ts";
import { known } from "../known.ts";
import { Choice } from "../parts/Choice.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { setHalfMade } from "../shell/half-made.ts";
import { type Asked, readAnswer } from "./asked.ts";
import type { Deed } from "./deeds.ts";
import { take, wrongTogether } from "./take.ts";

type Texts = { readonly [fact: string]: string };

/** Up to this many choices are shown all at once. */
const FEW = 5;

const Question = (props: {
  asked: Asked;
  value: string;
  fault: string | null;
  onValue: (value: string) => void;
}) => {
  const { asked, ...rest } = props;
  const shared = { ...rest, label: asked.label, ...(asked.hint ? { hint: asked.hint } : {}) };
  if (asked.is === "choice") {
    const options = asked.options?.(known.value) ?? [];
    if (options.length > FEW) return <Select {...shared} options={options} none="Choose" />;
    return options.length === 0 ? (
      <p class="small">{asked.label}: none is entered yet. The Office has a list for them.</p>
    ) : (
      <Choice {...shared} options={options} />
    );
  }
  const figures = asked.is === "whole" ? "whole" : asked.is === "words" ? "text" : "decimal";
  return <Field {...shared} type={figures} maxLength={asked.fact === "owner" ? 60 : 500} />;
};

const read = (deed: Deed, texts: Texts, standing: Standing): { facts: Facts; faults: Facts } => {
  const facts: Facts = {};
  const faults: Facts = {};
  for (const asked of deed.asks) {
    const answer = readAnswer(asked, texts[asked.fact] ?? "");
    if ("fault" in answer) faults[asked.fact] = answer.fault;
    else if (answer.value !== null) facts[asked.fact] = answer.value;
  }
  return { facts, faults: { ...wrongTogether(deed, facts, standing), ...faults } };
};

export const DeedForm = (props: { deed: Deed; standing: Standing; onDone: () => void }) => {
  const { deed, standing, onDone } = props;
  const [texts, setTexts] = useState<Texts>(() =>
    Object.fromEntries(deed.asks.map((asked) => [asked.fact, asked.first?.(standing) ?? ""])),
  );
  const [faults, setFaults] = useState<Facts>({});
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // The button may be far above: what it opened is brought into sight, and into focus for ears.
    heading.current?.focus({ preventScroll: true });
    heading.current?.parentElement?.scrollIntoView({ block: "nearest" });
    setHalfMade("deed", true);
    return () => setHalfMade("deed", false);
  }, []);
  const submit = async (event: Event) => {
    event.preventDefault();
    const answers = read(deed, texts, standing);
    setFaults(answers.faults);
    if (Object.keys(answers.faults).length > 0) return;
    if (await take(deed, answers.facts, standing)) onDone();
  };
  return (
    <form class="form deed" onSubmit={(event) => void submit(event)} noValidate>
      <h2 ref={heading} tabIndex={-1}>
        {deed.label}: {standing.number}
      </h2>
      {deed.asks.map((asked) => (
        <Question
          key={asked.fact}
          asked={asked}
          value={texts[asked.fact] ?? ""}
          fault={faults[asked.fact] ?? null}
          onValue={(value) => setTexts({ ...texts, [asked.fact]: value })}
        />
      ))}
      <div class="buttons">
        <button type="submit" class="button main">
          {deed.label}
        </button>
        <button type="button" class="button quiet" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  );
};
