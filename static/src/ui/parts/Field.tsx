// Parts of forms. Each has its label above, its hint and its fault in words below.

import { useId } from "preact/hooks";

export interface Common {
  label: string;
  hint?: string;
  /** What is wrong with what was typed, for people; null or absent when nothing is. */
  fault?: string | null;
}

export const Below = ({
  id,
  hint,
  fault,
}: {
  id: string;
  hint?: string;
  fault?: string | null;
}) => (
  <>
    {hint && (
      <p class="small" id={`${id}-hint`}>
        {hint}
      </p>
    )}
    {/* Always in the page, so that a fault is read out when it appears. */}
    <p class="look" id={`${id}-fault`} role="alert" hidden={!fault}>
      {fault}
    </p>
  </>
);

export const described = (id: string, { hint, fault }: Common): string | undefined =>
  [hint ? `${id}-hint` : "", fault ? `${id}-fault` : ""].filter(Boolean).join(" ") || undefined;

/** A figure is typed as text with a number keyboard: no spinner to slip on. */
const KEYBOARDS = {
  text: { type: "text" },
  whole: { type: "text", inputMode: "numeric" },
  decimal: { type: "text", inputMode: "decimal" },
  date: { type: "date" },
  tel: { type: "tel" },
} as const;

/** Words, figures or a day, in one line. */
export const Field = (
  props: Common & {
    value: string;
    onValue: (value: string) => void;
    type?: keyof typeof KEYBOARDS;
    maxLength?: number;
    /** Capitals come up on the keyboard: for numbers such as K12. */
    capitals?: boolean;
  },
) => {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <input
        id={id}
        {...KEYBOARDS[props.type ?? "text"]}
        value={props.value}
        onInput={(event) => props.onValue(event.currentTarget.value)}
        maxLength={props.maxLength}
        autoCapitalize={props.capitals ? "characters" : undefined}
        autoComplete="off"
        aria-invalid={props.fault ? "true" : undefined}
        aria-describedby={described(id, props)}
      />
      <Below id={id} {...below(props)} />
    </div>
  );
};

export interface Option {
  value: string;
  label: string;
}

/** One of many, from a list that the phone's own picker shows. */
export const Select = (
  props: Common & {
    value: string;
    onValue: (value: string) => void;
    options: readonly Option[];
    /** What the empty choice says, where there is one: "No customer yet". */
    none?: string;
  },
) => {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        onChange={(event) => props.onValue(event.currentTarget.value)}
        aria-invalid={props.fault ? "true" : undefined}
        aria-describedby={described(id, props)}
      >
        {props.none !== undefined && <option value="">{props.none}</option>}
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      <Below id={id} {...below(props)} />
    </div>
  );
};

export const below = ({ hint, fault }: Common): Pick<Common, "hint" | "fault"> => ({
  ...(hint === undefined ? {} : { hint }),
  ...(fault === undefined ? {} : { fault }),
});
