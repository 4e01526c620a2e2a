// A link or code from an owner, opened on the phone that it is for.

import { useState } from "preact/hooks";
import { arrive } from "../../sync/account.ts";
import { sync } from "../../sync/engine.ts";
import { Field } from "../parts/Field.tsx";
import { say } from "../parts/say.ts";
import { secretHere } from "../shell/route.ts";
import { Asking } from "./Asking.tsx";
import { beginAtTheirs } from "./begin-at.ts";
import { PasteLink } from "./PasteLink.tsx";
import { suggestedName } from "./phone-name.ts";
import { WaitingHere } from "./WaitingHere.tsx";

const Pair = () => {
  const [name, setName] = useState(suggestedName("", navigator.userAgent));
  const secret = secretHere();
  if (secret === "") {
    return (
      <>
        <p class="form">An owner makes the link in the Office, under Phones.</p>
        <PasteLink />
      </>
    );
  }
  const pair = async () => {
    const me = await arrive("pair", { token: secret, device_name: name.trim() });
    void sync.now();
    say.saved(`Paired. ${me.person.name} has this phone now.`, []);
    beginAtTheirs();
  };
  return (
    <Asking
      does="Pair this phone"
      lacks={name.trim() === "" ? "What is this phone called?" : null}
      onGo={pair}
    >
      <p>This phone joins the brewery. The link works once.</p>
      <WaitingHere />
      <Field
        label="What this phone is called"
        hint="So that the owner knows it in the list: the bench tablet, the van."
        value={name}
        onValue={setName}
        maxLength={60}
      />
    </Asking>
  );
};

export default Pair;
