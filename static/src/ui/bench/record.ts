// Saving what the bench did: all of a run in one go, so that it is kept whole or not at all.

import { book, type Saved } from "../../store/book.ts";
import { said, save } from "../parts/say.ts";
import { listWords } from "../words.ts";
import { type Deed, deedsFor, JOBS, newFacts, solutionInUse } from "./jobs.ts";
import { dosing, dosingReady } from "./load-dosing.ts";
import { clearPad, instead, job, moving, type, typed, volumeMl } from "./state.ts";

/** "117 filled." or "117 to 124 filled, 8 in all." */
const doneText = (numbers: readonly string[], done: string): string =>
  numbers.length <= 2
    ? `${listWords(numbers)} ${done}.`
    : `${numbers[0]} to ${numbers.at(-1)} ${done}, ${numbers.length} in all.`;

/** Note the job for each of these containers. */
export const recordJob = async (numbers: readonly string[]): Promise<void> => {
  // In the first moments the reckoning of doses may still be on its way.
  if (job.peek() === "fill" && dosing.peek() === null) await dosingReady();
  const made = numbers.flatMap((number) => {
    const standing = book.containers.peek().get(number) ?? null;
    return deedsFor(standing).map((deed: Deed) => ({ ...deed, subject: number }));
  });
  const typedNow = typed.peek();
  const volumeNow = volumeMl.peek();
  const insteadNow = instead.peek();
  const solution = job.peek() === "wash" ? solutionInUse() : null;
  const words = doneText(numbers, JOBS[job.peek()].done);
  // The pad is free for the next number at once, but only while the save holds off a reload;
  // what was typed comes back if it was not kept.
  const saving = save(words, () => book.recordMany(made));
  clearPad();
  if (await saving) {
    // Counted by itself: taking a wash back does not make the solution any fresher.
    if (solution) await book.record("solution_used", solution.id, { uses: numbers.length });
    return;
  }
  if (typed.peek() !== "") return;
  const trouble = said.peek();
  type(typedNow);
  volumeMl.value = volumeNow;
  instead.value = insteadNow;
  said.value = trouble;
};

/** Note that one failed its inspection, and why; it is set aside. */
export const recordFailed = async (number: string, why: string): Promise<void> => {
  const standing = book.containers.peek().get(number) ?? null;
  const made = deedsFor(standing).map((deed) => ({
    ...deed,
    subject: number,
    facts: deed.kind === "inspected" ? { passed: false, why } : deed.facts,
  }));
  if (await save(`${number} set aside: ${why}.`, () => book.recordMany(made))) clearPad();
};

/**
 * The number was wrong: what was done moves to the right one. A container that was entered on the
 * spot under the wrong number moves along, unless the right one is on record already.
 */
export const recordMove = async (to: string): Promise<void> => {
  const from = moving.peek();
  if (from === null) return;
  const done = from.entries.at(-1) ?? "";
  const entered = from.entries.slice(0, -1);
  const onRecord = book.containers.peek().get(to)?.registered != null;
  const moved = await save(`Put down to ${to}, not ${from.number}.`, async () => {
    const all: Saved[] = [];
    for (const entry of entered) {
      all.push(await (onRecord ? book.undo(entry) : book.moveTo(entry, to)));
    }
    if (!onRecord && entered.length === 0)
      all.push(await book.record("registered", to, newFacts()));
    all.push(await book.moveTo(done, to));
    return all;
  });
  if (moved) clearPad();
};
