// Whether this is a made-up brewery: the server says so. Kept on the phone, so that it is said with
// no network too, and taken back should the same address one day hold a real one.

import { book } from "../../store/book.ts";
import { overFetch } from "../../sync/transport.ts";

export const demo = book.setting<boolean>("demo", false);

const PATIENCE_MS = 10_000;

/** Called once at the start; without an answer what was known stands. */
export const lookWhetherDemo = async (): Promise<void> => {
  try {
    const { status, body } = await overFetch("", PATIENCE_MS)({ path: "/api/health" });
    if (status === 200) demo.value = (body as { demo?: unknown } | undefined)?.demo === true;
  } catch {
    // no answer: nothing new is known
  }
};
