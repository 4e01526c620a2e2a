// One field of a form, drawn by what is asked.

import { known } from "../../known.ts";
import { Choice, Several } from "../../parts/Choice.tsx";
import { Field, Select } from "../../parts/Field.tsx";
import { WEEKDAYS } from "../../words/weekdays.ts";
import { ByKind } from "./ByKind.tsx";
import { choicesFor } from "./of-kind.ts";
import { type FieldSpec, type OfficeKind, SPECS } from "./specs.ts";

interface Props {
  spec: FieldSpec;
  value: string;
  fault: string | null;
  onValue: (value: string) => void;
}

const KEYBOARD = {
  words: "text",
  whole: "whole",
  scaled: "decimal",
  gravity: "decimal",
  tenths: "decimal",
  litres: "decimal",
  day: "date",
  map: "text",
};

/** A list with nothing to choose from says what to do first. */
const noneYet = (kind: OfficeKind): string =>
  `No ${SPECS[kind].one} is entered yet. Enter it first; what is typed here stays.`;

const YES_OR_NO = [
  { value: "yes", label: "Yes" },
  { value: "no", label: "No" },
];

export const FieldFor = ({ spec, value, fault, onValue }: Props) => {
  const shared = {
    label: spec.label,
    value,
    onValue,
    fault,
    ...(spec.hint === undefined ? {} : { hint: spec.hint }),
  };
  switch (spec.is) {
    case "record": {
      const options = choicesFor(spec, value, known.value);
      const first = options.length === 0 ? { hint: noneYet(spec.of) } : {};
      return <Select {...shared} {...first} options={options} none={spec.none} />;
    }
    case "choice":
      return spec.list ? (
        <Select {...shared} options={spec.options} none="Not said yet" />
      ) : (
        <Choice {...shared} options={spec.options} />
      );
    case "yes":
      return <Choice {...shared} options={YES_OR_NO} />;
    case "several":
      return <Several label={spec.label} options={spec.options} value={value} onValue={onValue} />;
    case "by_kind":
      return <ByKind {...{ label: spec.label, hint: spec.hint, value, fault, onValue }} />;
    case "weekday":
      return (
        <Select
          {...shared}
          none="None fixed"
          options={WEEKDAYS.map((label, day) => ({ value: String(day), label }))}
        />
      );
    default:
      return (
        <Field
          {...shared}
          type={
            spec.is === "words" && spec.phone
              ? "tel"
              : (KEYBOARD[spec.is] as "text" | "whole" | "decimal" | "date")
          }
          {...(spec.is === "words" ? { maxLength: spec.most } : {})}
        />
      );
  }
};
