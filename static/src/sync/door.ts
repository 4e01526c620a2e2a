// Being let in: what the brewery says when it does not know this phone, or not any more.

import type { Door } from "../store/account.ts";
import { NoAnswer, type Reply, type Transport } from "./transport.ts";

export type Shut = Exclude<Door, "in">;

const WORDS: { readonly [door in Shut]: string } = {
  "not-set-up": "The brewery has no owner yet. Everything is kept on this phone.",
  "not-paired": "This phone is not signed in. Everything is kept on it.",
  revoked: "This phone was taken out of use. Everything is kept on it.",
};

/** The brewery has answered, and does not let this phone in. */
export class ShutOut extends NoAnswer {
  readonly door: Shut;
  constructor(door: Shut) {
    super(WORDS[door]);
    this.name = "ShutOut";
    this.door = door;
  }
}

/** The last part of a problem's type, which names it: "not-paired". */
export const slugOf = ({ body }: Reply): string => {
  const type = (body as { type?: unknown } | null | undefined)?.type;
  return typeof type === "string" ? (type.split("/").at(-1) ?? "") : "";
};

/** Asks like another transport, and rejects with ShutOut where the door is shut. */
export const throughTheDoor =
  (ask: Transport): Transport =>
  async (question) => {
    const reply = await ask(question);
    const slug = slugOf(reply);
    if (reply.status === 401 && slug in WORDS) throw new ShutOut(slug as Shut);
    return reply;
  };
