// Coming in and saying who one is: each of these is answered by what the brewery says of this
// phone and its people, which the phone then keeps.

import { type Me, setDoor, takeMe } from "../store/account.ts";
import { book, phone } from "../store/book.ts";
import { ask } from "./asking.ts";
import { meAnswer } from "./forms.ts";
import { NO_SENSE, NoAnswer, overFetch, PATIENCE_MS } from "./transport.ts";

type Told = { [name: string]: unknown };

const transport = overFetch("", PATIENCE_MS);

/** Ask the brewery for something that cannot wait. Rejects with words for people. */
export const askBrewery = (path: string, told?: Told): Promise<unknown> =>
  ask(transport, path, told);

const askForMe = async (path: string, told: Told): Promise<Me> => {
  const me = meAnswer(await askBrewery(path, told));
  if (me === null) throw new NoAnswer(NO_SENSE);
  return me;
};

/** First owner, pairing link, or name and passphrase: whoever it is has the phone in hand then. */
export const arrive = async (way: "begin" | "pair" | "sign-in", told: Told): Promise<Me> => {
  await book.open();
  const me = await askForMe(`/api/${way}`, { ...told, device: book.device });
  takeMe(phone, me, { arriving: true });
  return me;
};

/** Somebody of this brewery takes the phone in hand, by PIN. */
export const here = async (name: string, pin: string): Promise<void> => {
  takeMe(phone, await askForMe("/api/here", { name, pin }), { arriving: true });
};

/** The same for one whom the phone knows already: what comes back turns nothing here. */
export const tellHere = async (name: string, pin: string): Promise<void> => {
  takeMe(phone, await askForMe("/api/here", { name, pin }));
};

/** The passphrase once more, for what only an owner may do. */
export const stepUp = async (passphrase: string): Promise<void> => {
  takeMe(phone, await askForMe("/api/passphrase-check", { passphrase }));
};

/** What waits on the phone stays on it, and goes when somebody signs in again. */
export const signOut = async (): Promise<void> => {
  await askBrewery("/api/sign-out", {});
  setDoor(phone, "not-paired");
};
