// An amount for each kind of container that the brewery has, one field below the other.

import { book } from "../../../store/book.ts";
import { Field } from "../../parts/Field.tsx";
import { kindName } from "../../words.ts";
import { kindsInUse } from "../fleet/fleet.ts";
import { byKind, writtenByKind } from "./by-kind.ts";

export const ByKind = (props: {
  label: string;
  hint?: string | undefined;
  value: string;
  fault: string | null;
  onValue: (value: string) => void;
}) => {
  const { label, hint, value, fault, onValue } = props;
  const typed = byKind(value);
  const kinds = new Set([...kindsInUse(book.containers.value.values()), ...typed.keys()]);
  if (kinds.size === 0) return null;
  return (
    <fieldset class="field">
      <legend>{label}</legend>
      {hint !== undefined && <p class="small">{hint}</p>}
      {[...kinds].map((kind, n) => (
        <Field
          key={kind}
          label={kindName(kind)}
          type="decimal"
          value={typed.get(kind) ?? ""}
          onValue={(amount) => onValue(writtenByKind(new Map([...typed, [kind, amount]])))}
          fault={n === kinds.size - 1 ? fault : null}
        />
      ))}
    </fieldset>
  );
};
