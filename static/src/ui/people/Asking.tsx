// A form that is answered by the brewery there and then: one thing at a time, and what went wrong
// stands above the button until the next try.

import type { ComponentChildren } from "preact";
import { useEffect, useId, useState } from "preact/hooks";
import { faultWords } from "../parts/say.ts";
import { setHalfMade, whileSaving } from "../shell/half-made.ts";
import { sentence } from "../words.ts";

export const Asking = (props: {
  /** On the button. */
  does: string;
  /** What is missing, in words, or null. */
  lacks: string | null;
  onGo: () => Promise<void>;
  /** For what is not the one thing to do on the screen. */
  aside?: boolean;
  children: ComponentChildren;
}) => {
  const id = useId();
  // What is typed here is nowhere else: the app must not be started anew meanwhile.
  useEffect(() => () => setHalfMade(id, false), [id]);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const go = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    setFault(props.lacks);
    if (props.lacks !== null) return;
    setBusy(true);
    try {
      await whileSaving(props.onGo);
    } catch (wrong) {
      setFault(sentence(faultWords(wrong)));
    }
    setBusy(false);
  };
  return (
    <form
      class="form"
      noValidate
      onInput={() => setHalfMade(id, true)}
      onSubmit={(event) => void go(event)}
    >
      {props.children}
      <p class="look" role="alert" hidden={fault === null}>
        {fault}
      </p>
      <button type="submit" class={`button wide ${props.aside ? "" : "main"}`}>
        {busy ? "Asking the brewery…" : props.does}
      </button>
    </form>
  );
};
