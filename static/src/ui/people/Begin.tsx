// The very first start: the link that the brewery's server printed makes its first owner.

import { useState } from "preact/hooks";
import { arrive } from "../../sync/account.ts";
import { sync } from "../../sync/engine.ts";
import { Field } from "../parts/Field.tsx";
import { say } from "../parts/say.ts";
import { goOnTo, secretHere } from "../shell/route.ts";
import { Asking } from "./Asking.tsx";
import { PasteLink } from "./PasteLink.tsx";
import { suggestedName } from "./phone-name.ts";
import { Secret } from "./Secret.tsx";

const Begin = () => {
  const [name, setName] = useState("");
  const [passphrase, setPassphrase] = useState("");
  const [deviceName, setDeviceName] = useState<string | null>(null);
  const secret = secretHere();
  if (secret === "") {
    return (
      <>
        <p class="form">
          The server prints a link when it starts for the first time. Open it here, or paste it.
        </p>
        <PasteLink />
      </>
    );
  }
  const called = deviceName ?? suggestedName(name.trim(), navigator.userAgent);
  const begin = async () => {
    const told = { token: secret, name: name.trim(), passphrase, device_name: called.trim() };
    const me = await arrive("begin", told);
    void sync.now();
    say.saved(`Welcome, ${me.person.name}. The brewery is yours.`, []);
    goOnTo("office");
  };
  const lacks =
    name.trim() === "" ? "What is your name?" : passphrase === "" ? "Choose a passphrase." : null;
  return (
    <Asking does="Begin" lacks={lacks} onGo={begin}>
      <p>You are the first here, so you become the owner: you add the others and their phones.</p>
      <Field
        label="Your name"
        hint="It stands beside everything you record, and cannot be changed later."
        value={name}
        onValue={setName}
        maxLength={60}
      />
      <Secret
        label="A passphrase"
        hint="Some words that only you know, 12 letters or more. It lets you in again after months, and guards people and phones."
        value={passphrase}
        onValue={setPassphrase}
        fresh
      />
      <Field
        label="What this phone is called"
        value={called}
        onValue={setDeviceName}
        maxLength={60}
      />
    </Asking>
  );
};

export default Begin;
