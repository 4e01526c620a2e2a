// A passphrase. It can be shown: on a phone with wet hands nobody types one twice unseen.

import { useEffect, useId, useRef, useState } from "preact/hooks";
import { Below, below, type Common, described } from "../parts/Field.tsx";

const SHOWN = { type: "text" } as const;
const UNSEEN = { type: "password" } as const;

export const Secret = (
  props: Common & {
    value: string;
    onValue: (value: string) => void;
    /** For what keeps passphrases on the phone: whether this one is to be new. */
    fresh?: boolean;
    /** It has come up in answer to something, so the hands go on here. */
    next?: boolean;
  },
) => {
  const id = useId();
  const [shown, setShown] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (props.next) field.current?.focus();
  }, []);
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <div class="beside">
        <input
          id={id}
          ref={field}
          {...(shown ? SHOWN : UNSEEN)}
          value={props.value}
          onInput={(event) => props.onValue(event.currentTarget.value)}
          maxLength={200}
          autoCapitalize="none"
          spellcheck={false}
          autoComplete={props.fresh ? "new-password" : "current-password"}
          aria-invalid={props.fault ? "true" : undefined}
          aria-describedby={described(id, props)}
        />
        <button
          type="button"
          class="button"
          aria-pressed={shown}
          aria-controls={id}
          onClick={() => setShown(!shown)}
        >
          {shown ? "Hide" : "Show"}
        </button>
      </div>
      <Below id={id} {...below(props)} />
    </div>
  );
};
