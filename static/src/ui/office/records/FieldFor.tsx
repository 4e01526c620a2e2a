// One field of a form, drawn by what is asked.

import { known } from "../../known.ts";
import { Choice } from "../../parts/Choice.tsx";
import { Field, Select } from "../../parts/Field.tsx";
import { choicesFor } from "./of-kind.ts";
import { type FieldSpec, WEEKDAYS } from "./specs.ts";

interface Props {
  spec: FieldSpec;
  value: string;
  fault: string | null;
  onValue: (value: string) => void;
}

const KEYBOARD = {
  words: "text",
  whole: "whole",
  tenths: "decimal",
  litres: "decimal",
  day: "date",
};

export const FieldFor = ({ spec, value, fault, onValue }: Props) => {
  const shared = {
    label: spec.label,
    value,
    onValue,
    fault,
    ...(spec.hint === undefined ? {} : { hint: spec.hint }),
  };
  switch (spec.is) {
    case "record":
      return <Select {...shared} options={choicesFor(spec, value, known.value)} none={spec.none} />;
    case "choice":
      return <Choice {...shared} options={spec.options} />;
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
