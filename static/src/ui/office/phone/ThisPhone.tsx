// This phone: who holds it, how it looks, what it keeps, and what it runs.

import { useEffect } from "preact/hooks";
import type { Role } from "../../../domain/roles.ts";
import { book } from "../../../store/book.ts";
import { whoMay } from "../../../store/rights.ts";
import { signOut } from "../../../sync/account.ts";
import { sync } from "../../../sync/engine.ts";
import { known } from "../../known.ts";
import { person, role } from "../../mine.ts";
import { Choice } from "../../parts/Choice.tsx";
import { More } from "../../parts/More.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { roleMay } from "../../people/role-words.ts";
import { demo } from "../../shell/demo.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { ageWords, count } from "../../words.ts";
import { askToKeep, lookAtStorage, storage, storageWords } from "./storage.ts";
import { type Theme, theme } from "./theme.ts";
import { Versions } from "./Versions.tsx";

const Person = () => {
  const { me, door } = book.account.value;
  const letIn = me !== null && door === "in";
  return (
    <section class="form">
      <h2>Who has this phone</h2>
      <p>
        {person.value === "" ? "Nobody has signed in yet." : `${person.value} has it.`}
        {role.value !== null && ` ${person.value} ${roleMay(role.value)}.`}
      </p>
      {me !== null && <p class="small">The brewery knows it as {me.device.name}.</p>}
      <div class="buttons">
        {me !== null && (
          <a class="button" href={hrefTo("who")}>
            Somebody else
          </a>
        )}
        {!letIn && !demo.value && (
          <a class="button main" href={hrefTo("sign-in")}>
            Sign in
          </a>
        )}
      </div>
      {role.value !== "owner" && me !== null && (
        <p class="small">
          People and phones are looked after by {whoMay(book.account.value, isOwner)}.
        </p>
      )}
      {letIn && !demo.value && <SignOut />}
    </section>
  );
};

const isOwner = (one: Role): boolean => one === "owner";

const SignOut = () => {
  const { count: waiting } = book.waiting.value;
  const go = async () => {
    try {
      await signOut();
      say.saved("Signed out. What is recorded here goes on waiting here.", []);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  return (
    <More label="Sign this phone out">
      <div class="form">
        <p class="small">
          It gets and sends nothing until somebody signs in again, with a passphrase or a new link.
          {waiting > 0 && ` ${count(waiting, "entry waits", "entries wait")} on it, and will then.`}
        </p>
        <button type="button" class="button" onClick={() => void go()}>
          Sign out
        </button>
      </div>
    </More>
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
      <Versions />
    </>
  );
};
