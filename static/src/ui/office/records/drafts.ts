// What is typed in a form, kept while somebody looks elsewhere: nothing is lost by a wrong tap.

import { signal } from "@preact/signals";
import { setHalfMade } from "../../shell/half-made.ts";
import type { Typed } from "./reading.ts";

const drafts = signal<ReadonlyMap<string, Typed>>(new Map());

/** `key` names the form: its kind and the record's id, or "new". */
export const draftOf = (key: string): Typed | undefined => drafts.value.get(key);

export const keepDraft = (key: string, typed: Typed): void => {
  drafts.value = new Map(drafts.peek()).set(key, typed);
  setHalfMade("form", true);
};

export const dropDraft = (key: string): void => {
  const left = new Map(drafts.peek());
  left.delete(key);
  drafts.value = left;
  setHalfMade("form", left.size > 0);
};
