// Lists: a head, who it is, one sentence of reasons, one thing to do.

import type { ComponentChildren } from "preact";
import { Head, type HeadLook } from "./Head.tsx";

export interface LineProps {
  look?: HeadLook;
  title: string;
  /** The reason it stands here, in words: "ready since Mon, best before 18 Dec". */
  reason?: string;
  /** "look" for what needs a person, "fine" for what is good; the words must say it too. */
  tone?: "look" | "fine";
  href?: string;
  /** A figure at the end of the line with its unit in words, where nothing is to be done. */
  figure?: { value: string; unit: string };
  action?: { label: string; onPress: () => void };
  children?: ComponentChildren;
}

export const Line = (props: LineProps) => {
  const what = (
    <>
      {props.look && <Head look={props.look} />}
      <div>
        <p>
          <strong>{props.title}</strong>
        </p>
        {props.reason && <p class={`small ${props.tone ?? ""}`}>{props.reason}</p>}
      </div>
    </>
  );
  return (
    <li class="line">
      {props.href ? (
        <a class="what" href={props.href}>
          {what}
        </a>
      ) : (
        <div class="what">{what}</div>
      )}
      {props.figure && (
        <p class="figure">
          {props.figure.value}
          <small>{props.figure.unit}</small>
        </p>
      )}
      {props.action && (
        <button
          type="button"
          class="button"
          aria-label={`${props.action.label}: ${props.title}`}
          onClick={props.action.onPress}
        >
          {props.action.label}
        </button>
      )}
      {props.children}
    </li>
  );
};

export const Lines = (props: {
  heading: string;
  /** Beside the heading: how many, or "4 customers, 23 containers". */
  count?: string | number;
  children: ComponentChildren;
}) => (
  <section class="lines">
    <h2>
      {props.heading} {props.count !== undefined && <span>{props.count}</span>}
    </h2>
    <ul>{props.children}</ul>
  </section>
);
