// What is seldom needed, one tap away.

import type { ComponentChildren } from "preact";

export const More = (props: { label: string; open?: boolean; children: ComponentChildren }) => (
  <details class="more" open={props.open ?? false}>
    <summary>{props.label}</summary>
    {props.children}
  </details>
);
