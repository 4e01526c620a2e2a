// An entry that the brewery did not take: why, and what can be done about it.

import { useState } from "preact/hooks";
import { book, type OwnEntry } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { Field } from "../../parts/Field.tsx";
import { save } from "../../parts/say.ts";
import { fullTimeWords } from "../../words.ts";
import { attempt } from "./attempt.ts";
import { readRepair, repairFields } from "./repair.ts";
import { ownTitle, problemWords } from "./said.ts";

const KEYBOARD = {
  litres: "decimal",
  kilograms: "decimal",
  tenths: "decimal",
  whole: "whole",
  words: "text",
  day: "date",
  number: "text",
} as const;

const Repair = ({ own, onDone }: { own: OwnEntry; onDone: () => void }) => {
  const [typed, setTyped] = useState<{ [name: string]: string }>({});
  const [faults, setFaults] = useState<{ [name: string]: string }>({});
  const keep = async () => {
    const read = readRepair(own, typed);
    setFaults(read.faults);
    if (Object.keys(read.faults).length > 0) return;
    const id = own.entry.id;
    if (await save("Put right.", () => book.putRight(id, read.repair))) onDone();
  };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      {repairFields(own).map(({ name, label, is, value, problem }) => (
        <Field
          key={name}
          label={label}
          type={KEYBOARD[is]}
          value={typed[name] ?? value}
          onValue={(text) => setTyped({ ...typed, [name]: text })}
          fault={faults[name] ?? problem}
        />
      ))}
      <button type="submit" class="button main">
        Keep it like this
      </button>
    </form>
  );
};

/** Gone is gone, so this one asks again, in the same place. */
const LetGo = ({ own }: { own: OwnEntry }) => {
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <button type="button" class="button quiet" onClick={() => setSure(true)}>
        It is not needed
      </button>
    );
  }
  return (
    <button
      type="button"
      class="button to-look"
      onClick={() => void attempt("Taken off this phone.", () => book.letGo(own.entry.id))}
    >
      Yes, take it off this phone for good
    </button>
  );
};

export const Attention = ({ own }: { own: OwnEntry }) => {
  const [changing, setChanging] = useState(false);
  const { now } = known.value;
  return (
    <li class="question">
      <div>
        <p>
          <strong>{ownTitle(own, known.value)}</strong>{" "}
          <span class="small">{fullTimeWords(own.entry.happened_at, now)}</span>
        </p>
        <p class="look">{problemWords(own)}</p>
      </div>
      <div class="buttons">
        {own.verdict === "refused" && (
          <button
            type="button"
            class="button main"
            aria-expanded={changing}
            onClick={() => setChanging(!changing)}
          >
            Put right
          </button>
        )}
        <button
          type="button"
          class="button"
          onClick={() =>
            void attempt("It is sent once more.", () => book.offerAgain([own.entry.id]))
          }
        >
          Send it again
        </button>
        <LetGo own={own} />
      </div>
      {changing && <Repair own={own} onDone={() => setChanging(false)} />}
    </li>
  );
};
