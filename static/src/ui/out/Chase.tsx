// Asking a customer for containers: what was said last, and a note of today's call.

import { useState } from "preact/hooks";
import { addDays, londonDate } from "../../domain/calendar.ts";
import type { ChaseOutcome, Customer } from "../../domain/records.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Choice } from "../parts/Choice.tsx";
import { Field } from "../parts/Field.tsx";
import { More } from "../parts/More.tsx";
import { save } from "../parts/say.ts";
import { byWords, dateWords, dayWords, sentence, timeWords } from "../words.ts";
import { askAgainOn } from "./ask-again.ts";
import { earlierWords, outcomeWords } from "./call-words.ts";
import { nextWeekday, promiseFault } from "./promise.ts";

/** What was said last, and by whom. */
const LastChase = ({ record }: { record: Customer | undefined }) => {
  const chase = record?.chase ?? null;
  if (chase === null) return <p class="small">Nobody has asked for these yet.</p>;
  const { now } = known.value;
  const promised =
    chase.promised_on === null ? "" : ` Promised for ${dayWords(chase.promised_on, now)}.`;
  const again =
    chase.ask_again_on === null ? "" : ` Ask again ${dayWords(chase.ask_again_on, now)}.`;
  return (
    <p>
      <strong>Last asked {timeWords(chase.since, now)}.</strong>
      {outcomeWords(chase.outcome)}
      {promised} {chase.words !== "" && `“${chase.words}”`}
      {again} <span class="small">{sentence(byWords(chase))}.</span>
    </p>
  );
};

/** The few before that, the last one first: what somebody wants to know who rings again. */
const EarlierChases = ({ record }: { record: Customer | undefined }) => {
  const earlier = [...(record?.earlier ?? [])].reverse();
  const { now } = known.value;
  return earlier.length === 0 ? null : (
    <More label="Asked before that">
      <ul class="form">
        {earlier.map((one) => (
          <li key={one.entry}>
            <strong>{timeWords(one.since, now)}.</strong> {earlierWords(one, now)}{" "}
            <span class="small">{sentence(byWords(one))}.</span>
          </li>
        ))}
      </ul>
    </More>
  );
};

type When = "none" | "van" | "day";

const NoteForm = (props: { customer: string; name: string; delivery: number | undefined }) => {
  const [words, setWords] = useState("");
  const [outcome, setOutcome] = useState<ChaseOutcome>("spoke");
  const [when, setWhen] = useState<When>("none");
  const [day, setDay] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const today = londonDate(known.value.now);
  const van = props.delivery === undefined ? null : nextWeekday(today, props.delivery);
  const promised = when === "van" ? van : when === "day" ? day : null;
  const keep = async () => {
    const wrong = when === "day" ? promiseFault(day, today) : null;
    setFault(wrong);
    if (wrong !== null) return;
    const facts = {
      words: words.trim(),
      outcome,
      promised_on: promised,
      ask_again_on: promised === null ? askAgainOn() : addDays(promised, 1),
    };
    const text = `Noted that ${props.name} was asked.`;
    if (!(await save(text, () => book.record("chased", props.customer, facts)))) return;
    setWords("");
    setWhen("none");
    setDay("");
  };
  return (
    <div class="form">
      <Choice
        label="What came of it"
        value={outcome}
        onValue={(value) => setOutcome(value as ChaseOutcome)}
        options={[
          { value: "spoke", label: "Spoke to them" },
          { value: "no_answer", label: "No answer" },
          { value: "not_there", label: "They say: not here" },
        ]}
      />
      <Field label="What was said" value={words} onValue={setWords} maxLength={2000} />
      <Choice
        label="Promised for"
        value={when}
        onValue={(value) => setWhen(value as When)}
        options={[
          { value: "none", label: "No day" },
          ...(van === null
            ? []
            : [{ value: "van", label: `Next delivery, ${dateWords(van, known.value.now)}` }]),
          { value: "day", label: "Another day" },
        ]}
      />
      {when === "day" && (
        <Field label="Which day" type="date" value={day} onValue={setDay} fault={fault} />
      )}
      {promised === null && (
        <p class="small">Then it is time to ask again {dayWords(askAgainOn(), known.value.now)}.</p>
      )}
      <button type="button" class="button main wide" onClick={() => void keep()}>
        Keep this note
      </button>
    </div>
  );
};

export const Chase = (props: { customer: string; name: string; record: Customer | undefined }) => (
  <section class="chase">
    <div class="told">
      <LastChase record={props.record} />
    </div>
    <EarlierChases record={props.record} />
    {may("chased") && (
      <More label="Note a call">
        <NoteForm
          customer={props.customer}
          name={props.name}
          delivery={props.record?.fields.delivery_day}
        />
      </More>
    )}
  </section>
);
