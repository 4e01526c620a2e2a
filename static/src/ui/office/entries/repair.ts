// Putting right an entry that the brewery did not take: which of its facts can be typed anew, and
// how they are read. What has no field here stays as it was.

import { isNumber } from "../../../domain/numbers.ts";
import type { OwnEntry } from "../../../store/book.ts";
import { sentence } from "../../words.ts";
import { plainNumber } from "../register/numbers.ts";
import { ASKED, type Asked, WHOLES_IN, type Written } from "./asked.ts";

/** The number of the container itself; no fact is called so. */
export const SUBJECT = "subject";

export interface RepairField extends Asked {
  name: string;
  value: string;
  /** What the brewery said of it. */
  problem: string | null;
}

export interface FactProblem {
  name: string;
  /** What the field is called on the screen. */
  label: string;
  /** What the brewery said of it, without the name that the fact has on the wire. */
  says: string;
}

/** The last part of a pointer names the fact: "#/facts/volume_ml". */
export const factProblems = ({ problem }: OwnEntry): FactProblem[] =>
  (problem?.errors ?? []).map(({ pointer = "", detail = "" }) => {
    const name = pointer.split("/").at(-1) ?? "";
    const says = detail.startsWith(`${name} `) ? detail.slice(name.length + 1) : detail;
    return { name, label: ASKED.get(name)?.label ?? "", says: sentence(says) };
  });

const problemsOf = (own: OwnEntry): Map<string, string> =>
  new Map(factProblems(own).map(({ name, says }) => [name, says]));

const written = (value: unknown, is: Written): string => {
  const wholes = WHOLES_IN[is];
  if (typeof value === "number" && wholes !== undefined) return String(value / wholes);
  return value === null || value === undefined ? "" : String(value);
};

export const repairFields = (own: OwnEntry): RepairField[] => {
  const { subject, facts } = own.entry;
  const problems = problemsOf(own);
  const fields: RepairField[] = [];
  if (isNumber(plainNumber(subject))) {
    const problem = problems.get(SUBJECT) ?? null;
    fields.push({ name: SUBJECT, label: "Number", is: "number", value: subject, problem });
  }
  for (const [name, value] of Object.entries(facts)) {
    const asked = ASKED.get(name);
    if (asked === undefined) continue;
    const problem = problems.get(name) ?? null;
    fields.push({ ...asked, name, value: written(value, asked.is), problem });
  }
  return fields;
};

export interface ReadRepair {
  repair: { subject?: string; facts: { [name: string]: unknown } };
  faults: { [name: string]: string };
}

const UNREAD = Symbol("unread");

const readOne = (typed: string, is: Written): unknown => {
  const text = typed.trim();
  const wholes = WHOLES_IN[is];
  if (wholes !== undefined) {
    const clean = text.replace(",", ".");
    return /^-?\d{1,7}(\.\d{1,3})?$/.test(clean)
      ? Math.floor(Number(clean) * wholes + 0.5)
      : UNREAD;
  }
  if (is === "number") return isNumber(plainNumber(text)) ? plainNumber(text) : UNREAD;
  if (is === "day") return text === "" ? null : /^\d{4}-\d\d-\d\d$/.test(text) ? text : UNREAD;
  return text;
};

export const readRepair = (
  own: OwnEntry,
  typed: { readonly [name: string]: string },
): ReadRepair => {
  const facts: { [name: string]: unknown } = { ...own.entry.facts };
  const faults: { [name: string]: string } = {};
  const repair: ReadRepair["repair"] = { facts };
  for (const { name, is, value } of repairFields(own)) {
    const read = readOne(typed[name] ?? value, is);
    if (read === UNREAD) {
      faults[name] =
        is === "number" ? "A container's number, such as 117." : "A figure, such as 4.5.";
    } else if (name === SUBJECT) repair.subject = String(read);
    else facts[name] = read;
  }
  return { repair, faults };
};
