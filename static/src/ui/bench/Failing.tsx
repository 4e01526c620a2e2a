// An inspection found something. The usual reasons are one tap; anything else is typed.

import { useState } from "preact/hooks";
import { Field } from "../parts/Field.tsx";
import type { ScreenProps } from "../shell/screens.ts";
import { recordFailed } from "./record.ts";
import { failing } from "./state.ts";

const REASONS = [
  "leaks",
  "smells",
  "soil inside",
  "shive bush worn",
  "keystone bush worn",
  "dented",
];

const Failing = ({ path: [number = ""] }: ScreenProps) => {
  const [why, setWhy] = useState("");
  return (
    <div class="now failing">
      <p>
        <strong>Set {number} aside.</strong> Why?
      </p>
      <div class="buttons">
        {REASONS.map((reason) => (
          <button
            type="button"
            class="button"
            key={reason}
            onClick={() => void recordFailed(number, reason)}
          >
            {reason}
          </button>
        ))}
        <button
          type="button"
          class="button quiet"
          onClick={() => {
            failing.value = false;
          }}
        >
          Nothing wrong
        </button>
      </div>
      <div class="with-button">
        <Field label="Another reason" value={why} onValue={setWhy} maxLength={200} />
        <button
          type="button"
          class="button main"
          onClick={() => why.trim() && void recordFailed(number, why.trim())}
        >
          Set aside
        </button>
      </div>
    </div>
  );
};

export default Failing;
