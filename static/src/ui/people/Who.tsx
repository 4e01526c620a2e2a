// Who has this phone? On a shared tablet people change by PIN, with no network too.

import { useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { person } from "../mine.ts";
import { Field } from "../parts/Field.tsx";
import { Line, Lines } from "../parts/Line.tsx";
import { Pad } from "../parts/pad/Pad.tsx";
import { say } from "../parts/say.ts";
import { goTo, hrefTo } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { useTitle } from "../shell/title.ts";
import { beginAtTheirs } from "./begin-at.ts";
import { roleName } from "./role-words.ts";
import { switchTo } from "./switching.ts";

const PinOf = ({ name }: { name: string }) => {
  useTitle(name);
  const [pin, setPin] = useState("");
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const cannot = busy ? "One moment." : pin.length < 4 ? "A PIN has 4 to 8 digits." : null;
  const go = async () => {
    if (cannot !== null) return setFault(cannot);
    setBusy(true);
    const why = await switchTo(name, pin);
    setBusy(false);
    setPin("");
    setFault(why);
    if (why !== null) return;
    say.saved(`${person.value} has this phone now.`, []);
    beginAtTheirs();
  };
  return (
    <div class="bench">
      <div class="form">
        <p>
          <a class="button" href={hrefTo("sign-in", name)}>
            With the passphrase
          </a>
        </p>
      </div>
      <div class="hand">
        <p class="now look" role="alert" hidden={fault === null}>
          {fault}
        </p>
        <p class="now typed">
          <output aria-label={`${pin.length} digits of the PIN`}>
            {pin === "" ? "–" : "•".repeat(pin.length)}
          </output>
          <span class="small"> {name}'s PIN</span>
        </p>
        <Pad
          types="pin"
          typed={pin}
          onTyped={(typed) => {
            setPin(typed);
            setFault(null);
          }}
          go={{ does: busy ? "…" : "This is", to: "me", cannot, onPress: () => void go() }}
        />
      </div>
    </div>
  );
};

/** Who has never proved themselves on this phone is not in its list. */
const NotListed = () => {
  const [name, setName] = useState("");
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() !== "") goTo("who", name.trim());
      }}
    >
      <Field
        label="Name of somebody who is not in the list"
        hint="The first time on this phone it takes a signal. An owner gives the PIN, in the Office under People."
        value={name}
        onValue={setName}
        maxLength={60}
      />
      <button type="submit" class="button">
        Give their PIN
      </button>
    </form>
  );
};

const Who = ({ path }: ScreenProps) => {
  const [name] = path;
  const people = book.account.value.me?.people ?? [];
  if (name !== undefined) return <PinOf key={name} name={name} />;
  return (
    <div class="sections">
      <Lines heading="People" count={people.length}>
        {people.map((one) => (
          <Line
            key={one.name}
            title={one.name}
            reason={
              one.name === person.value ? `${roleName(one.role)}, has it now` : roleName(one.role)
            }
            {...(one.name === person.value ? {} : { href: hrefTo("who", one.name) })}
          />
        ))}
      </Lines>
      <NotListed />
    </div>
  );
};

export default Who;
