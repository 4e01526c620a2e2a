// A brewery in memory: the contract of push, pull and snapshot as plainly as it can be said.
// It folds everything anew each time, so that it cannot share a mistake with what steps forward.

import {
  type Entry,
  type MadeEntry,
  type RecordKind,
  rowType,
} from "../../../static/src/domain/entries.ts";
import { entriesBySubject, fold } from "../../../static/src/domain/fold.ts";
import { isNumber } from "../../../static/src/domain/numbers.ts";
import { drawnMl, foldRecord } from "../../../static/src/domain/records.ts";
import { canonical } from "../../../static/src/store/canonical.ts";
import { crc32 } from "../../../static/src/store/crc32.ts";
import { type Row, rowKey, type SubjectType } from "../../../static/src/store/kept.ts";
import type { Question, Reply } from "../../../static/src/sync/transport.ts";

interface Taken {
  entry: Entry;
  position: number;
  json: string;
}

export class Brewery {
  epoch = "epoch-1";
  head = 0;
  rules = 1;
  nowMs: () => number;
  taken = new Map<string, Taken>();
  held = new Map<string, MadeEntry>();
  rows = new Map<string, Row>();
  /** Entries of these ids cannot be judged now. */
  later = new Set<string>();
  /** Every answer that took entries in, to see that it was never done twice. */
  accepted: string[] = [];
  pageRows = 3;
  mostBytes = 2 ** 20;

  constructor(nowMs: () => number) {
    this.nowMs = nowMs;
  }

  answer({ path, body }: Question): Reply {
    const { pathname, searchParams } = new URL(path, "https://brewery.example");
    const reply = (status: number, answer: unknown): Reply => {
      return { status, body: structuredClone(answer), retryAfterMs: null };
    };
    if (pathname === "/api/push") {
      const tooLarge = (body ?? "").length > this.mostBytes;
      const problem = { type: "/problems/too-large", title: "Too large", status: 413 };
      return tooLarge ? reply(413, problem) : reply(200, this.push(JSON.parse(body ?? "")));
    }
    if (pathname === "/api/health") {
      return reply(200, { status: "ok", server_time: new Date(this.nowMs()).toISOString() });
    }
    if (pathname === "/api/snapshot") {
      const { epoch, head: position, rules } = this;
      return reply(200, { epoch, position, rules, checksum: this.checksum(), pages: 1 });
    }
    if (pathname === "/api/snapshot/pages") return reply(200, this.page(searchParams.get("after")));
    if (pathname !== "/api/pull") return reply(404, { type: "about:blank", status: 404 });
    const since = Number(searchParams.get("since"));
    if (searchParams.get("epoch") !== this.epoch || since > this.head) {
      const { epoch, head } = this;
      return reply(409, { type: "/problems/another-ledger", status: 409, epoch, head });
    }
    return reply(200, this.pull(since));
  }

  push({ entries }: { entries: MadeEntry[] }) {
    const results = entries.map((entry) => this.#judge(entry));
    this.#project();
    const { epoch, head } = this;
    return { epoch, head, server_time: new Date(this.nowMs()).toISOString(), results };
  }

  pull(since: number) {
    const changed = [...this.rows.values()]
      .filter(({ position }) => position > since)
      .sort((a, b) => a.position - b.position);
    const rows = changed.slice(0, this.pageRows);
    const more = changed.length > rows.length;
    const next = more ? (rows.at(-1)?.position ?? since) : this.head;
    const { epoch, head, rules } = this;
    const answer = { epoch, since, next, more, head, rules, rows };
    return more ? answer : { ...answer, checksum: this.checksum() };
  }

  page(after: string | null) {
    const keys = [...this.rows.keys()].sort().filter((key) => after === null || key > after);
    const those = keys.slice(0, this.pageRows);
    const rows = those.map((key) => this.rows.get(key));
    return { rows, next: keys.length > those.length ? those.at(-1) : null };
  }

  checksum(): number {
    let sum = 0;
    for (const { type, id, position } of this.rows.values())
      sum += crc32(`${type}:${id}:${position}`);
    return sum % 2 ** 48;
  }

  #judge(entry: MadeEntry) {
    const { id } = entry;
    const json = canonical(entry);
    const known = this.taken.get(id);
    if (known !== undefined) {
      if (known.json === json) return { id, verdict: "known", position: known.position };
      return { id, verdict: "held", problem: { title: "Known otherwise" } };
    }
    if (this.later.has(id)) return { id, verdict: "later" };
    if (entry.facts["words"] === "refuse") {
      return { id, verdict: "refused", problem: { title: "Malformed" } };
    }
    if (entry.facts["words"] === "hold") {
      this.held.set(id, entry);
      return { id, verdict: "held", problem: { title: "For a person" } };
    }
    return { id, verdict: "accepted", position: this.#take(entry) };
  }

  /** An owner has decided that what is held counts. */
  takeIn(entry: MadeEntry): void {
    this.#take(entry);
    this.#project();
  }

  #take(entry: MadeEntry): number {
    const { id } = entry;
    this.held.delete(id);
    this.head += 1;
    const folded: Entry = { ...entry, effective_at: entry.happened_at, clock: "ok" };
    this.taken.set(id, { entry: folded, position: this.head, json: canonical(entry) });
    this.accepted.push(id);
    return this.head;
  }

  /** Every row from all entries; those that have changed get positions after their entries'. */
  #project(): void {
    const entries = [...this.taken.values()].map(({ entry }) => entry);
    const subjects = entriesBySubject(entries);
    const counting = [...subjects.values()].flat();
    for (const { facts, kind } of entries) {
      if (kind === "filled" && !subjects.has(facts["gyle"])) subjects.set(facts["gyle"], []);
      if (kind === "renumbered" && !subjects.has(facts["to"])) subjects.set(facts["to"], []);
    }
    for (const [id, those] of subjects) {
      const type = typeOf(id, those);
      const record = () => {
        const doc = foldRecord(type as RecordKind, those);
        return type === "gyle" ? { ...doc, drawn_ml: drawnMl(id, counting) } : doc;
      };
      const doc = type === "container" ? fold(id, those) : record();
      const held = this.rows.get(rowKey(type, id));
      if (held !== undefined && canonical(held.doc) === canonical(doc)) continue;
      this.head += 1;
      this.rows.set(rowKey(type, id), { type, id, position: this.head, doc });
    }
  }
}

/** A subject that only fills speak of is a gyle that nobody has described yet. */
const typeOf = (id: string, those: Entry[]): SubjectType => {
  if (isNumber(id)) return "container";
  const [first] = those;
  return first === undefined ? "gyle" : rowType(first.kind);
};
