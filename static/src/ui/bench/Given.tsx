// What is really given of a dose, above how it was worked out: another amount, or none.

import { useState } from "preact/hooks";
import { ownFigures } from "../own-figures.ts";
import { Field } from "../parts/Field.tsx";
import { closedOf, closedWords } from "./closed.ts";
import type { DoseLine } from "./dose-line.ts";
import { amountGiven, readAmount, typedAmount, withAmount } from "./instead.ts";
import { sizeName } from "./sizes.ts";
import { instead } from "./state.ts";

const GivenTo = ({ line, n }: { line: DoseLine; n: number }) => {
  const { what, unit, sizes } = line;
  const { kind, volume_ml, count } = sizes[n] ?? { kind: null, volume_ml: 0, count: 0 };
  const proposed = line.each?.[n] ?? null;
  const [text, setText] = useState(() => String(amountGiven(instead.peek(), line, n) ?? ""));
  const read = readAmount(text, unit, volume_ml);
  const isOwn = typedAmount(instead.value, what, volume_ml) !== null;
  const take = (typed: string) => {
    setText(typed);
    const now = readAmount(typed, unit, volume_ml);
    if ("fault" in now) return;
    const amount = now.amount === proposed ? null : now.amount;
    instead.value = withAmount(instead.peek(), what, volume_ml, amount);
  };
  const giveBack = () => {
    setText(String(proposed ?? ""));
    instead.value = withAmount(instead.peek(), what, volume_ml, null);
  };
  return (
    <>
      <Field
        label={`Into ${count > 1 ? "each" : "the"} ${sizeName(kind, volume_ml)}, ${unit}`}
        hint={proposed === null ? "Not worked out." : `Worked out: ${proposed} ${unit}.`}
        type="whole"
        value={text}
        fault={"fault" in read && (text !== "" || proposed !== null) ? read.fault : null}
        onValue={take}
      />
      <div class="buttons">
        <button type="button" class="button" onClick={() => take("0")}>
          None
        </button>
        {isOwn && (
          <button type="button" class="button" onClick={giveBack}>
            {proposed === null ? "Not known" : "As worked out"}
          </button>
        )}
      </div>
    </>
  );
};

/** With every size of a run; what is typed holds for the next fill only. */
export const Given = ({ line }: { line: DoseLine }) => {
  const closed = closedOf([line], instead.value);
  const words = closed && closedWords(closed, ownFigures.value);
  return (
    <div class="form">
      {line.sizes.map((size, n) => (
        <GivenTo key={`${size.kind} ${size.volume_ml}`} line={line} n={n} />
      ))}
      {words && (
        <p class={words.look ? "look" : ""} aria-live="polite">
          {words.says}
        </p>
      )}
    </div>
  );
};
