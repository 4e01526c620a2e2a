// Entries that the brewery did not take. They stay until a person has decided: put right as a new
// entry, offered once more as they are, or let go. The program drops none by itself.

import type { Facts } from "../domain/entries.ts";
import { asMade } from "./kept.ts";
import type { Own } from "./own-entries.ts";
import type { OwnChange, Phone } from "./phone.ts";
import { type Draft, type Saved, save } from "./saving.ts";
import { NotPossible } from "./trouble.ts";

/** What is different in the entry that takes the place of a refused one. */
export interface Repair {
  subject?: string;
  facts?: Facts;
  happenedAt?: string;
}

type Waiting = Extract<Own, { where: "attention" }>;

const waitingEntry = (phone: Phone, id: string): Waiting => {
  const own = phone.own.byId(id);
  if (own?.where === "attention") return own;
  throw new NotPossible("This entry does not need attention any more.");
};

/**
 * The new entry happened when the old one did, by the clock of then, unless the person says
 * otherwise. Both changes are one transaction.
 */
export const putRight = async (
  phone: Phone,
  id: string,
  repair: Repair,
  person: string,
): Promise<Saved> => {
  const { n, kept } = waitingEntry(phone, id);
  const { kind, subject, facts, happened_at: happenedAt } = kept.entry;
  const draft: Draft = { kind, subject, facts, happenedAt, ...repair };
  if (repair.happenedAt === undefined) draft.reckoning = asMade(kept);
  const [saved] = await save(phone, [draft], person, async (transaction) => {
    await transaction.objectStore("attention").delete(n);
    return [[n, null]];
  });
  return saved as Saved;
};

export const offerAgain = async (phone: Phone, ids: readonly string[]): Promise<void> => {
  const waiting = ids.map((id) => waitingEntry(phone, id));
  const changes = waiting.map(({ n, kept }): OwnChange => {
    return [n, { where: "phone", n, kept: asMade(kept) }];
  });
  await phone.connection.write(["outbox", "attention"], async (transaction) => {
    const moves = changes.flatMap(([n, own]) => [
      transaction.objectStore("outbox").put((own as Own).kept, n),
      transaction.objectStore("attention").delete(n),
    ]);
    await Promise.all<unknown>(moves);
  });
  phone.ownChanged(changes);
  phone.tabs.tell({ about: "own", keys: changes.map(([n]) => n) });
};

export const letGo = async (phone: Phone, id: string): Promise<void> => {
  const { n } = waitingEntry(phone, id);
  await phone.connection.write(["attention"], (transaction) =>
    transaction.objectStore("attention").delete(n),
  );
  phone.ownChanged([[n, null]]);
  phone.tabs.tell({ about: "own", keys: [n] });
};
