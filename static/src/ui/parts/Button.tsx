// A button that says why it cannot be pressed, instead of going grey without a word.

import type { ComponentChildren } from "preact";
import { say } from "./say.ts";

export interface ButtonProps {
  onPress: () => void;
  children: ComponentChildren;
  /** "main" is the one thing to do here; "quiet" is out of the way. */
  look?: "main" | "quiet" | "";
  wide?: boolean;
  /** Why not now. The button stays pressable and then says it. */
  cannot?: string | null;
  label?: string;
}

export const Button = (props: ButtonProps) => (
  <button
    type="button"
    class={`button ${props.look ?? ""} ${props.wide ? "wide" : ""}`}
    aria-disabled={props.cannot ? "true" : undefined}
    aria-label={props.label}
    onClick={() => (props.cannot ? say.trouble(props.cannot) : props.onPress())}
  >
    {props.children}
  </button>
);
