// Asking the brewery for the history of one container.

import { overFetch } from "../../sync/transport.ts";
import type { Told } from "./history.ts";

/** A person waits for this one, and what the phone has itself stands there already. */
const PATIENCE_MS = 10_000;
const brewery = overFetch("", PATIENCE_MS);

const isTold = (one: unknown): one is Told =>
  typeof one === "object" && one !== null && "id" in one && "kind" in one && "facts" in one;

/** What the brewery tells; null where it cannot be asked. It knows nothing of a new number. */
export const ask = async (number: string): Promise<readonly Told[] | null> => {
  try {
    const { status, body } = await brewery({ path: `/api/containers/${number}` });
    if (status === 404) return [];
    const entries: unknown = (body as { entries?: unknown } | undefined)?.entries;
    return status === 200 && Array.isArray(entries) ? entries.filter(isTold) : null;
  } catch {
    return null; // no answer is an ordinary state here; the page says whose entries it shows
  }
};
