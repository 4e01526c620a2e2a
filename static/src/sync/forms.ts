// The forms of the brewery's answers. What does not have its form is no answer at all: half of one
// is never applied.

import { ROLES } from "../domain/roles.ts";
import type { Me } from "../store/account.ts";
import type { Answer } from "../store/answers.ts";
import type { Page, SnapshotHead } from "../store/first-load.ts";
import type { Problem, Row } from "../store/kept.ts";

type Unknown = { [name: string]: unknown };
const isObject = (value: unknown): value is Unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isPosition = (value: unknown): value is number =>
  Number.isSafeInteger(value) && Number(value) >= 0;
const isText = (value: unknown): value is string => typeof value === "string";

export interface PushAnswer {
  epoch: string;
  serverTime: string;
  answers: Answer[];
}

/** The answer to a push of entries with these ids, in their order. */
export const pushAnswer = (body: unknown, ids: readonly string[]): PushAnswer | null => {
  if (!isObject(body) || !isText(body["epoch"]) || !isTime(body["server_time"])) return null;
  const results = body["results"];
  if (!Array.isArray(results) || results.length !== ids.length) return null;
  const answers = results.map((result: unknown, at) => verdictFrom(result, ids[at]));
  if (answers.includes(null)) return null;
  return { epoch: body["epoch"], serverTime: body["server_time"], answers: answers as Answer[] };
};

/** What the brewery's clock says, from its answer about its health. */
export const serverTime = (body: unknown): string | null =>
  isObject(body) && isTime(body["server_time"]) ? body["server_time"] : null;

const isTime = (value: unknown): value is string =>
  isText(value) && !Number.isNaN(Date.parse(value));

const verdictFrom = (result: unknown, id: string | undefined): Answer | null => {
  if (!isObject(result) || id === undefined || result["id"] !== id) return null;
  const { verdict, position, problem } = result;
  if (verdict === "accepted" || verdict === "known") {
    return isPosition(position) ? { id, verdict, position } : null;
  }
  if (verdict === "held" || verdict === "refused") {
    return { id, verdict, problem: isObject(problem) ? (problem as Problem) : {} };
  }
  // A word of a later release: the entry stays where it is, its neighbours go on.
  return isText(verdict) ? { id, verdict: "later" } : null;
};

export interface PullAnswer {
  epoch: string;
  next: number;
  more: boolean;
  rules: number;
  rows: Row[];
  checksum: number | null;
  /** Turns when what the brewery says of this phone and its people has changed. */
  me: number | null;
}

/** The answer to a pull since a position. One that neither brings nor moves anything must end. */
export const pullAnswer = (body: unknown, since: number): PullAnswer | null => {
  if (!isObject(body) || !isText(body["epoch"]) || body["since"] !== since) return null;
  const { epoch, next, more, rules, rows, checksum, me_version } = body;
  if (!isPosition(next) || next < since || typeof more !== "boolean" || !isPosition(rules))
    return null;
  if (!areRows(rows) || (more && next === since)) return null;
  if (!more && !isPosition(checksum)) return null;
  const [sum, me] = [checksum, me_version].map((one) => (isPosition(one) ? one : null));
  return { epoch, next, more, rules, rows, checksum: sum ?? null, me: me ?? null };
};

export const snapshotHead = (body: unknown): SnapshotHead | null => {
  if (!isObject(body)) return null;
  const { epoch, position, rules } = body;
  if (!isText(epoch) || !isPosition(position) || !isPosition(rules)) return null;
  return { epoch, position, rules };
};

/** A page after a key; `next` must lead on. */
export const snapshotPage = (body: unknown, after: string | null): Page | null => {
  if (!isObject(body) || !areRows(body["rows"])) return null;
  const { rows, next } = body;
  if (next === null) return { rows, next };
  return isText(next) && next !== after && rows.length > 0 ? { rows, next } : null;
};

const areRows = (rows: unknown): rows is Row[] =>
  Array.isArray(rows) &&
  rows.every(
    (row: unknown) =>
      isObject(row) &&
      isText(row["type"]) && // of a later release perhaps: kept, so that the sum comes out
      isText(row["id"]) &&
      isPosition(row["position"]) &&
      isObject(row["doc"]),
  );

/** Whether an answer names this life of the ledger. */
export const isLedger = (body: unknown, epoch: string): boolean =>
  isObject(body) && body["epoch"] === epoch;

export const isAnotherLedger = (status: number, body: unknown): boolean =>
  status === 409 && isObject(body) && String(body["type"]).endsWith("/problems/another-ledger");

/** What the brewery says of this phone and its people. */
export const meAnswer = (body: unknown): Me | null => {
  if (!isObject(body) || !isPosition(body["version"])) return null;
  const { device, person, people } = body;
  if (!isObject(device) || !isText(device["id"]) || !isText(device["name"])) return null;
  if (!isPerson(person) || !Array.isArray(people) || !people.every(isPerson)) return null;
  return body as unknown as Me;
};

const isPerson = (person: unknown): boolean =>
  isObject(person) &&
  isText(person["name"]) &&
  (ROLES as readonly unknown[]).includes(person["role"]);
