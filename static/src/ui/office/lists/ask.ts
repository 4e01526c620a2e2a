// Lists of the brewery's own, read by its server: what they say, before anything is recorded.

import type { Draft } from "../../../store/saving.ts";
import { fetchJson, NotGiven } from "../fetching.ts";

export interface SheetKind {
  kind: string;
  title: string;
  columns: readonly { heading: string; required: boolean }[];
}

/** A draft as it was read; of a new customer nobody has made the id yet. */
interface ReadDraft {
  kind: Draft["kind"];
  subject: string | null;
  facts: Draft["facts"];
  happened_at?: string;
}

export interface Reading {
  rows: number;
  drafts: readonly ReadDraft[];
  on_record: number;
  faults: readonly { row: number; column: string; says: string }[];
  not_used: readonly string[];
}

/** What the server takes at once. */
const MOST_BYTES = 1024 * 1024;
const TOO_LARGE =
  "The file has more than 1 MiB. Take out what is no list, or split it into smaller files, each with the headings in its first row.";

export const askForKinds = async (): Promise<readonly SheetKind[]> =>
  ((await fetchJson("/api/sheets")) as { sheets: SheetKind[] }).sheets;

export const readList = async (kind: string, file: Blob): Promise<Reading> => {
  if (file.size > MOST_BYTES) throw new NotGiven(TOO_LARGE);
  const headers = { "Content-Type": "application/octet-stream" };
  return (await fetchJson(`/api/sheets/${kind}`, {
    method: "POST",
    headers,
    body: file,
  })) as Reading;
};

/** Ready to be recorded. */
export const draftsOf = ({ drafts }: Reading, newId: () => string): Draft[] =>
  drafts.map(({ kind, subject, facts, happened_at }) => ({
    kind,
    subject: subject ?? newId(),
    facts,
    ...(happened_at === undefined ? {} : { happenedAt: happened_at }),
  }));
