// What the brewery said of the entries it was sent: applied in one transaction, exactly to the
// entries that the answer names.

import { type Attention, asMade, type ClockOffset, type Problem, type Sent } from "./kept.ts";
import { writeMeta } from "./meta.ts";
import type { Own } from "./own-entries.ts";
import type { OwnChange, Phone } from "./phone.ts";
import type { WriteTransaction } from "./schema.ts";

export type Answer =
  | { id: string; verdict: "accepted"; position: number }
  | { id: string; verdict: "known"; position: number }
  | { id: string; verdict: "held"; problem: Problem }
  | { id: string; verdict: "refused"; problem: Problem }
  | { id: string; verdict: "later" };

export const takeAnswers = async (
  phone: Phone,
  epoch: string,
  answers: readonly Answer[],
  clock: ClockOffset | null,
): Promise<void> => {
  const at = clock?.measuredAt ?? phone.clock.now();
  const changes = answers.flatMap((answer) => changeFor(phone, epoch, answer, at));
  await phone.connection.write(["outbox", "sent", "attention", "meta"], async (transaction) => {
    const writing = changes.map(({ n, own }) => {
      if (own.where === "brewery") return transaction.objectStore("sent").put(own.kept, n);
      return transaction.objectStore("attention").put(own.kept, n);
    });
    const removing = [
      removeFromOutbox(
        transaction,
        changes.filter(({ from }) => from === "phone").map(({ n }) => n),
      ),
      ...changes
        .filter(({ from, own }) => from !== own.where && from === "attention")
        .map(({ n }) => transaction.objectStore("attention").delete(n)),
    ];
    const correcting = clock === null ? [] : [writeMeta(transaction, "clock", clock)];
    await Promise.all<unknown>([...writing, ...removing, ...correcting]);
  });
  if (changes.length === 0) return;
  phone.ownChanged(changes.map(({ n, own }): OwnChange => [n, own]));
  phone.tabs.tell({ about: "own", keys: changes.map(({ n }) => n) });
};

interface Change {
  n: number;
  from: Own["where"];
  own: Exclude<Own, { where: "phone" }>;
}

const changeFor = (phone: Phone, epoch: string, answer: Answer, at: string): Change[] => {
  const own = phone.own.byId(answer.id);
  if (own === undefined || own.where === "brewery" || answer.verdict === "later") return [];
  const { n, where: from } = own;
  const was = asMade(own.kept);
  if (answer.verdict === "accepted" || answer.verdict === "known") {
    const kept: Sent = { ...was, epoch, position: answer.position, sentAt: at };
    return [{ n, from, own: { where: "brewery", n, kept } }];
  }
  const { verdict, problem } = answer;
  // Asked again about what is held, and nothing new was said.
  if (own.where === "attention" && own.kept.verdict === verdict) {
    if (own.kept.problem.type === problem.type) return [];
  }
  const kept: Attention = { ...was, verdict, problem, answeredAt: at };
  return [{ n, from, own: { where: "attention", n, kept } }];
};

/** A range goes in one step, if it holds nothing but what was answered. */
const removeFromOutbox = async (transaction: WriteTransaction, keys: number[]): Promise<void> => {
  if (keys.length === 0) return;
  const outbox = transaction.objectStore("outbox");
  const range = IDBKeyRange.bound(Math.min(...keys), Math.max(...keys));
  if ((await outbox.count(range)) === keys.length) await outbox.delete(range);
  else await Promise.all(keys.map((n) => outbox.delete(n)));
};

const DAYS_SENT_ARE_KEPT = 30;

/**
 * Forget own entries that the brewery has had for a month: an undo of them is worked out there. Only
 * by the brewery's time: a clock set wrong by a year would forget what a restored ledger lacks.
 */
export const forgetOldSent = async (phone: Phone): Promise<void> => {
  if (!phone.clock.sure) return;
  const oldest = new Date(Date.parse(phone.clock.now()) - DAYS_SENT_ARE_KEPT * 86_400_000);
  const limit = oldest.toISOString();
  const old = [...phone.own.all].filter(
    (own) => own.where === "brewery" && own.kept.sentAt < limit,
  );
  if (old.length === 0) return;
  await phone.connection.write(
    ["sent"],
    (transaction) => Promise.all(old.map(({ n }) => transaction.objectStore("sent").delete(n))),
    "relaxed",
  );
  phone.ownChanged(old.map(({ n }): OwnChange => [n, null]));
};
