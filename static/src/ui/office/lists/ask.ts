// Lists of the brewery's own, read by its server: what they say, before anything is recorded.

import type { Draft } from "../../../store/saving.ts";
import { CANNOT_REACH, NO_SENSE, PATIENCE_MS } from "../../../sync/transport.ts";

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
const TOO_LARGE = "The file has more than 1 MiB. Take out what is no list, or split it.";

/** Why there is no answer; the message is for people. */
export class NotRead extends Error {
  override readonly name = "NotRead";
}

const ask = async (path: string, sending: RequestInit = {}): Promise<unknown> => {
  const asking = { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) } as const;
  let response: Response;
  try {
    response = await fetch(path, { ...asking, ...sending });
  } catch (cause) {
    throw new NotRead(CANNOT_REACH, { cause });
  }
  let said: unknown;
  try {
    said = await response.json();
  } catch (cause) {
    throw new NotRead(NO_SENSE, { cause });
  }
  if (!response.ok) throw new NotRead((said as { detail?: string }).detail ?? NO_SENSE);
  return said;
};

export const askForKinds = async (): Promise<readonly SheetKind[]> =>
  ((await ask("/api/sheets")) as { sheets: SheetKind[] }).sheets;

export const readList = async (kind: string, file: Blob): Promise<Reading> => {
  if (file.size > MOST_BYTES) throw new NotRead(TOO_LARGE);
  const headers = { "Content-Type": "application/octet-stream" };
  return (await ask(`/api/sheets/${kind}`, { method: "POST", headers, body: file })) as Reading;
};

/** Ready to be recorded. */
export const draftsOf = ({ drafts }: Reading, newId: () => string): Draft[] =>
  drafts.map(({ kind, subject, facts, happened_at }) => ({
    kind,
    subject: subject ?? newId(),
    facts,
    ...(happened_at === undefined ? {} : { happenedAt: happened_at }),
  }));
