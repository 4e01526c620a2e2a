// What a list says when it has nothing to list: why, and what to do about it.

import type { ComponentChildren } from "preact";
import { Head } from "./Head.tsx";

const NOTHING = {
  label: "",
  shape: "cask",
  level: 0,
  ring: null,
  spile: null,
  tapped: false,
  away: true,
  stopped: false,
} as const;

export const Empty = (props: { says: string; children?: ComponentChildren }) => (
  <div class="empty">
    <Head look={NOTHING} />
    <p>{props.says}</p>
    {props.children}
  </div>
);
