// This phone: who holds it, how it looks, what it keeps, and what it runs.

import { useEffect, useState } from "preact/hooks";
import { RULES_VERSION } from "../../../domain/rules.ts";
import { book } from "../../../store/book.ts";
import { sync } from "../../../sync/engine.ts";
import { known } from "../../known.ts";
import { Choice } from "../../parts/Choice.tsx";
import { Field } from "../../parts/Field.tsx";
import { say } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { ageWords } from "../../words.ts";
import { askToKeep, lookAtStorage, storage, storageWords } from "./storage.ts";
import { type Theme, theme } from "./theme.ts";

const person = book.setting<string>("person", "");

const Person = () => {
  const [typed, setTyped] = useState(person.value);
  const same = typed.trim() === person.value;
  const keep = () => {
    person.value = typed.trim();
    say.saved(
      person.value === "" ? "Entries carry no name." : `Entries are ${person.value}'s now.`,
      [],
    );
  };
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <h2>Who holds this phone</h2>
      <Field
        label="Name"
        hint="It stands beside everything that is recorded here."
        value={typed}
        onValue={setTyped}
        maxLength={60}
      />
      {!same && (
        <button type="submit" class="button main">
          Keep the name
        </button>
      )}
    </form>
  );
};

const Look = () => (
  <section class="form">
    <h2>Look</h2>
    <Choice
      label="Chalk and slate"
      labelUnseen
      value={theme.value}
      onValue={(value) => {
        theme.value = value as Theme;
      }}
      options={[
        { value: "", label: "As the phone" },
        { value: "slate", label: "Slate" },
        { value: "board", label: "Chalk" },
      ]}
    />
    <p class="small">Slate is dark, for the cellar. Chalk is light, for a bright yard.</p>
  </section>
);

const Storage = () => {
  useEffect(() => void lookAtStorage(), []);
  const ask = async () => {
    if (await askToKeep()) say.saved("The phone keeps it.", []);
    else say.trouble("The phone has not agreed yet. It does once the app is on its home screen.");
  };
  return (
    <section class="form">
      <h2>What it keeps</h2>
      {storageWords(storage.value).map((words) => (
        <p key={words}>{words}</p>
      ))}
      {storage.value.persisted === false && (
        <button type="button" class="button" onClick={() => void ask()}>
          Ask it to keep everything
        </button>
      )}
    </section>
  );
};

const Brewery = () => {
  const { online, busy, lastSyncAt, message } = sync.state.value;
  const age = lastSyncAt === null ? null : ageWords(lastSyncAt, known.value.now);
  const last = age === null ? "never yet" : age === "just now" ? age : `${age} ago`;
  return (
    <section class="form">
      <h2>The brewery</h2>
      <p>
        {online ? "It answers." : "It has not answered."} This phone last knew everything: {last}.
      </p>
      {message !== null && <p class="look">{message}</p>}
      <button type="button" class="button" onClick={() => void sync.now()}>
        {busy ? "Asking the brewery…" : "Send and fetch now"}
      </button>
    </section>
  );
};

export const ThisPhone = () => {
  useTitle("This phone");
  return (
    <>
      <Person />
      <Look />
      <Brewery />
      <Storage />
      <section class="form">
        <h2>Versions</h2>
        <p class="small">
          App {__BUILD_ID__}, rules {RULES_VERSION}.
        </p>
      </section>
    </>
  );
};
