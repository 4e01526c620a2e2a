// How the engine speaks to the brewery. Anything that is not an answer in the form agreed on is
// "no answer": nothing has happened, and it is asked again later.

export interface Question {
  path: string;
  /** JSON to send; without it something is only asked for. */
  body?: string;
}

export interface Reply {
  status: number;
  /** The JSON of the answer; undefined where it was none. */
  body: unknown;
  /** How long the brewery asks to be left alone. */
  retryAfterMs: number | null;
}

/** Rejects with NoAnswer where nothing came back. */
export type Transport = (question: Question) => Promise<Reply>;

/** No use can be made of what came back, if anything did. The message is for people. */
export class NoAnswer extends Error {
  readonly retryAfterMs: number | null;
  constructor(message: string, retryAfterMs: number | null = null, cause?: unknown) {
    super(message, { cause });
    this.name = "NoAnswer";
    this.retryAfterMs = retryAfterMs;
  }
}

export const PATIENCE_MS = 30_000;
export const CANNOT_REACH = "The brewery cannot be reached. Everything is kept on this phone.";
export const NO_SENSE = "The brewery's answer made no sense. Everything is kept on this phone.";

/** Why no use can be made of a reply: in the brewery's words, where it says that it cannot now. */
export const noUse = ({ status, body, retryAfterMs }: Reply): NoAnswer => {
  const title = status === 503 ? (body as { title?: unknown } | null | undefined)?.title : null;
  const said = typeof title === "string" ? `${title}. Everything is kept on this phone.` : NO_SENSE;
  return new NoAnswer(said, retryAfterMs);
};

/** Asks over HTTP. Whatever has not answered in full after `patienceMs` has not answered. */
export const overFetch =
  (origin: string, patienceMs: number): Transport =>
  async ({ path, body }) => {
    const asking: RequestInit = { cache: "no-store", signal: AbortSignal.timeout(patienceMs) };
    const sending: RequestInit =
      body === undefined
        ? {}
        : { method: "POST", headers: { "Content-Type": "application/json" }, body };
    try {
      const response = await fetch(origin + path, { ...asking, ...sending });
      const text = await response.text();
      const retryAfter = response.headers.get("Retry-After");
      const retryAfterMs = retryAfter === null ? null : waitFrom(retryAfter, Date.now());
      return { status: response.status, body: jsonFrom(text), retryAfterMs };
    } catch (error) {
      throw new NoAnswer(CANNOT_REACH, null, error);
    }
  };

/** A number of seconds or a date (RFC 9110, 10.2.3); null where it is neither. */
export const waitFrom = (retryAfter: string, nowMs: number): number | null => {
  const waitMs = /^\d+$/.test(retryAfter)
    ? Number(retryAfter) * 1000
    : Date.parse(retryAfter) - nowMs;
  return Number.isFinite(waitMs) ? Math.max(0, waitMs) : null;
};

const jsonFrom = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // a captive portal's page, or half an answer: told apart by its form
  }
};
