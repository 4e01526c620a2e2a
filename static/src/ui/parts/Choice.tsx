// Choices of a form that are shown all at once, each as large as a thumb.

import { useId } from "preact/hooks";
import { Below, below, type Common, described, type Option } from "./Field.tsx";

/** One of a few, all shown at once, each as large as a thumb. */
export const Choice = (
  props: Common & {
    value: string;
    onValue: (value: string) => void;
    options: readonly Option[];
    /** The label is said to ears only, where the screen makes it plain. */
    labelUnseen?: boolean;
  },
) => {
  const id = useId();
  return (
    <fieldset class="field" aria-describedby={described(id, props)}>
      <legend class={props.labelUnseen ? "unseen" : ""}>{props.label}</legend>
      <div class="choice">
        {props.options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === props.value}
              onChange={() => props.onValue(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      <Below id={id} {...below(props)} />
    </fieldset>
  );
};

export const Tick = (props: {
  label: string;
  value: boolean;
  onValue: (value: boolean) => void;
}) => (
  <label class="tick">
    <input
      type="checkbox"
      checked={props.value}
      onChange={(event) => props.onValue(event.currentTarget.checked)}
    />
    {props.label}
  </label>
);

/** Any of a few; the value holds those that are ticked, with spaces between. */
export const Several = (props: {
  label: string;
  value: string;
  options: readonly Option[];
  onValue: (value: string) => void;
}) => {
  const ticked = new Set(props.value.split(" "));
  const turn = (value: string, on: boolean) =>
    props.options
      .map((option) => option.value)
      .filter((one) => (one === value ? on : ticked.has(one)))
      .join(" ");
  return (
    <fieldset class="field">
      <legend>{props.label}</legend>
      {props.options.map(({ value, label }) => (
        <Tick
          key={value}
          label={label}
          value={ticked.has(value)}
          onValue={(on) => props.onValue(turn(value, on))}
        />
      ))}
    </fieldset>
  );
};
