// Asking the brewery for what needs it at once: signing in, people, devices, what is held. Unlike
// entries none of this can wait in an outbox, so a refusal or silence is told there and then.

import { slugOf } from "./door.ts";
import { NO_SENSE, NoAnswer, type Transport } from "./transport.ts";

/** The brewery has answered no. The message is for people; `slug` names the problem. */
export class Refused extends Error {
  readonly slug: string;
  constructor(slug: string, message: string) {
    super(message);
    this.name = "Refused";
    this.slug = slug;
  }
}

/** The body of a good answer. Rejects with Refused, or with NoAnswer where none came. */
export const ask = async (
  transport: Transport,
  path: string,
  told?: { [name: string]: unknown },
): Promise<unknown> => {
  const question = told === undefined ? { path } : { path, body: JSON.stringify(told) };
  const reply = await transport(question);
  if (reply.status >= 200 && reply.status < 300) return reply.body;
  const slug = slugOf(reply);
  if (slug === "") throw new NoAnswer(NO_SENSE, reply.retryAfterMs);
  throw new Refused(slug, wordsOf(reply.body));
};

interface ProblemBody {
  title?: unknown;
  detail?: unknown;
  errors?: { detail?: unknown }[];
}

/** What is wrong with single fields, or else what the problem is called and what to do about it. */
export const wordsOf = (problem: unknown): string => {
  const { title, detail, errors } = problem as ProblemBody;
  const fields = Array.isArray(errors) ? errors.map((error) => error.detail) : [];
  const said = (fields.length > 0 ? fields : [title, detail]).filter(isText).filter(Boolean);
  return said.length === 0 ? NO_SENSE : said.map(stopped).join(" ");
};

const isText = (words: unknown): words is string => typeof words === "string";

const stopped = (words: string): string => (/[.?!]$/.test(words) ? words : `${words}.`);
