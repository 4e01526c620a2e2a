// Coming in again, months later perhaps: by name and passphrase, or by a new link.

import { useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { arrive } from "../../sync/account.ts";
import { sync } from "../../sync/engine.ts";
import { person } from "../mine.ts";
import { Field } from "../parts/Field.tsx";
import { More } from "../parts/More.tsx";
import { say } from "../parts/say.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { Asking } from "./Asking.tsx";
import { beginAtTheirs } from "./begin-at.ts";
import { PasteLink } from "./PasteLink.tsx";
import { suggestedName } from "./phone-name.ts";
import { Secret } from "./Secret.tsx";
import { WaitingHere } from "./WaitingHere.tsx";

const SignIn = ({ path }: ScreenProps) => {
  const [name, setName] = useState(path[0] ?? person.peek());
  const [passphrase, setPassphrase] = useState("");
  const { me, door } = book.account.value;
  const deviceName = me?.device.name ?? suggestedName("", navigator.userAgent);
  const signIn = async () => {
    const told = { name: name.trim(), passphrase, device_name: deviceName };
    const { person: in_ } = await arrive("sign-in", told);
    void sync.now();
    say.saved(`${in_.name} has this phone now.`, []);
    beginAtTheirs();
  };
  const lacks =
    name.trim() === "" ? "Whose name?" : passphrase === "" ? "The passphrase is missing." : null;
  return (
    <>
      <Asking does="Sign in" lacks={lacks} onGo={signIn}>
        {door === "revoked" && (
          <p class="look">
            An owner took this phone out of use. A new link from an owner brings it back.
          </p>
        )}
        <WaitingHere />
        <Field label="Name" value={name} onValue={setName} maxLength={60} />
        <Secret label="Passphrase" value={passphrase} onValue={setPassphrase} />
      </Asking>
      <More label="With a link from an owner" open={door === "revoked"}>
        <p class="form small">
          Who has no passphrase comes in by a new link or code. An owner makes it in the Office,
          under Phones; scan it with this phone, or paste it here.
        </p>
        <PasteLink />
      </More>
    </>
  );
};

export default SignIn;
