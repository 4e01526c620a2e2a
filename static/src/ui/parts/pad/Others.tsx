// Digits that mean one container may be meant for another all the same: 12 on record, and K12.

import type { Signal } from "@preact/signals";
import type { Typed } from "../typed-number.ts";

export const Others = (props: {
  of: Typed & { is: "one" };
  /** Where the pad keeps which of them is meant. */
  chosen: Signal<string | null>;
}) => (
  <>
    {props.of.others.map((other) => (
      <button
        type="button"
        class="button quiet"
        key={other}
        onClick={() => {
          props.chosen.value = other;
        }}
      >
        or {other}
      </button>
    ))}
  </>
);
