// Around every screen that is an owner's: others read who looks after this, and the passphrase is
// asked for where the brewery wants it.

import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { whoMay } from "../../../store/rights.ts";
import { stepUp } from "../../../sync/account.ts";
import { person, role } from "../../mine.ts";
import { Button } from "../../parts/Button.tsx";
import { Asking } from "../../people/Asking.tsx";
import { Secret } from "../../people/Secret.tsx";
import { hrefTo } from "../../shell/route.ts";
import { giveUp, waitsForPassphrase } from "./telling.ts";

const StepUp = () => {
  const [passphrase, setPassphrase] = useState("");
  const go = async () => {
    await stepUp(passphrase);
    const goOn = waitsForPassphrase.peek();
    waitsForPassphrase.value = null;
    goOn?.();
  };
  return (
    <>
      <Asking
        does="Go on"
        lacks={passphrase === "" ? "The passphrase is missing." : null}
        onGo={go}
      >
        <p>People and phones are behind your passphrase. It holds for 15 minutes.</p>
        <Secret
          label={`${person.value}'s passphrase`}
          value={passphrase}
          onValue={setPassphrase}
          next
        />
      </Asking>
      <div class="form">
        <Button look="quiet" onPress={giveUp}>
          Leave it
        </Button>
      </div>
    </>
  );
};

/** The brewery goes by whom it was told of last: after a change of hands with no signal, somebody else. */
const SomebodyElse = () => {
  const told = book.account.value.me?.person.name ?? "";
  if (told === "" || told === person.value) return null;
  return (
    <div class="form">
      <p class="look">The brewery still takes this phone to be in {told}'s hands.</p>
      <a class="button" href={hrefTo("who", person.value)}>
        Give {person.value}'s PIN again
      </a>
    </div>
  );
};

export const ForOwner = ({ children }: { children: ComponentChildren }) => {
  // Who goes elsewhere has left it.
  useEffect(() => () => void (waitsForPassphrase.peek() && giveUp()), []);
  if (role.value !== "owner") {
    const owners = whoMay(book.account.value, (one) => one === "owner");
    return <p class="form">People and phones are looked after by {owners}.</p>;
  }
  return (
    <>
      <SomebodyElse />
      {waitsForPassphrase.value !== null && <StepUp />}
      <div hidden={waitsForPassphrase.value !== null}>{children}</div>
    </>
  );
};
