// What the Office asks the brewery's server for at once: lists and papers, which it alone can make.

import { wordsOf } from "../../sync/asking.ts";
import { CANNOT_REACH, NO_SENSE, PATIENCE_MS } from "../../sync/transport.ts";

/** Why there is no answer; the message is for people. */
export class NotGiven extends Error {
  override readonly name = "NotGiven";
}

/** The answer, where it is a good one. Rejects with NotGiven. */
export const fetchAnswer = async (path: string, sending: RequestInit = {}): Promise<Response> => {
  const asking = { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) } as const;
  let response: Response;
  try {
    response = await fetch(path, { ...asking, ...sending });
  } catch (cause) {
    throw new NotGiven(CANNOT_REACH, { cause });
  }
  if (!response.ok) throw new NotGiven(await whyNot(response));
  return response;
};

/** The JSON of an answer. Rejects with NotGiven. */
export const fetchJson = async (path: string, sending?: RequestInit): Promise<unknown> => {
  const response = await fetchAnswer(path, sending);
  try {
    return await response.json();
  } catch (cause) {
    throw new NotGiven(NO_SENSE, { cause });
  }
};

const whyNot = async (response: Response): Promise<string> => {
  try {
    return wordsOf(await response.json());
  } catch {
    return NO_SENSE; // a gateway's page
  }
};
