// "Wrong number": which container was it really?

import { useState } from "preact/hooks";
import { normalNumber } from "../../domain/numbers.ts";
import { Field } from "../parts/Field.tsx";

export const WhichNumber = (props: {
  wrong: string;
  /** Answers whether it was saved. */
  onNumber: (number: string) => Promise<boolean>;
  onLeave: () => void;
}) => {
  const [typed, setTyped] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    let number: string;
    try {
      number = normalNumber(typed);
    } catch {
      setFault("A number has letters and digits, at most 8, such as 117 or K12.");
      return;
    }
    if (number === props.wrong) setFault(`It stands under ${props.wrong} already.`);
    else if (await props.onNumber(number)) props.onLeave();
  };
  return (
    <form class="form" onSubmit={(event) => void submit(event)} noValidate>
      <Field
        label={`Not ${props.wrong}, but`}
        value={typed}
        onValue={setTyped}
        fault={fault}
        capitals
        maxLength={12}
      />
      <div class="buttons">
        <button type="submit" class="button main">
          Move it there
        </button>
        <button type="button" class="button quiet" onClick={props.onLeave}>
          Leave it
        </button>
      </div>
    </form>
  );
};
