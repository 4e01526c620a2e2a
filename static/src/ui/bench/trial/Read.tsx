// Reading the jars: one tap for each, kept on the phone from tap to tap and noted in one go.

import { signal } from "@preact/signals";
import { setting } from "../../../domain/figures.ts";
import type { Trial } from "../../../domain/records.ts";
import { book } from "../../../store/book.ts";
import { atHand } from "../../at-hand.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Choice } from "../../parts/Choice.tsx";
import { Field } from "../../parts/Field.tsx";
import { save } from "../../parts/say.ts";
import {
  jarsRead,
  minutesSince,
  type Readings,
  readingsFault,
  samplesOf,
  stepWords,
} from "./jars.ts";

/** By trial; written down at each tap, so that an empty battery loses none. */
const drafts = atHand<{ readonly [trial: string]: Readings }>("readings", {});

type What = "clarity" | "resettled" | "sediment";
const what = signal<What>("clarity");

const WHAT = [
  { value: "clarity", label: "Clarity" },
  { value: "resettled", label: "Shaken" },
  { value: "sediment", label: "Sediment" },
];
const SCORES = ["1", "2", "3", "4", "5"].map((value) => ({ value, label: value }));

const note = (id: string, jar: number, read: Readings[number]): void => {
  const before = drafts.peek();
  const readings = before[id] ?? {};
  drafts.value = { ...before, [id]: { ...readings, [jar]: { ...readings[jar], ...read } } };
};

const drop = (id: string): void => {
  const { [id]: _, ...others } = drafts.peek();
  drafts.value = others;
};

const Jar = (props: { id: string; jar: number; label: string; startedAt: string }) => {
  const { id, jar, label, startedAt } = props;
  const read = drafts.value[id]?.[jar];
  if (what.value === "sediment") {
    return (
      <Field
        label={`${label}: settled, mL`}
        type="decimal"
        value={read?.sediment ?? ""}
        onValue={(sediment) => note(id, jar, { sediment })}
      />
    );
  }
  const score = what.value === "clarity" ? read?.clarity?.score : read?.resettled;
  const take = (text: string) => {
    const after_min = minutesSince(startedAt, book.now());
    const taken = Number(text);
    note(
      id,
      jar,
      what.peek() === "clarity" ? { clarity: { after_min, score: taken } } : { resettled: taken },
    );
  };
  return <Choice label={label} options={SCORES} value={String(score ?? "")} onValue={take} />;
};

const HINTS = (bright: number): { [what in What]: string } => ({
  clarity: `1 is dull, 5 is brilliant; from ${bright} on it counts as bright. Hold each jar to the same light.`,
  resettled: "Turn each jar over, let it settle as long as before, and read its clarity again.",
  sediment: "What lies at the bottom, as read off the jar.",
});

export const Read = (props: { id: string; trial: Trial; startedAt: string }) => {
  const { id, trial, startedAt } = props;
  const readings = drafts.value[id] ?? {};
  const begun = jarsRead(readings).length > 0;
  const cannot = begun ? readingsFault(trial, readings) : "Nothing is read yet.";
  const keep = async () => {
    const jars = jarsRead(readings);
    if (await save("The readings are kept.", () => book.record("trial_read", id, { jars }))) {
      drop(id);
    }
  };
  return (
    <div class="form jars">
      <Choice
        label="Read now"
        options={WHAT}
        value={what.value}
        onValue={(value) => {
          what.value = value as What;
        }}
      />
      <p class="small">{HINTS(setting("trial_bright_score", ownFigures.value))[what.value]}</p>
      {samplesOf(trial).map((sample, n) => (
        <Jar
          key={n}
          id={id}
          jar={n}
          label={`Jar ${n + 1}: ${stepWords(sample)}`}
          startedAt={startedAt}
        />
      ))}
      <Button look="main" wide cannot={cannot} onPress={() => void keep()}>
        Keep these readings
      </Button>
      {begun && (
        <Button look="quiet" onPress={() => drop(id)}>
          Begin this reading again
        </Button>
      )}
    </div>
  );
};
