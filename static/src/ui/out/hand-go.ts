// What the big button does now, and what stands on it.

import { mostThatFitsMl } from "../../domain/containers.ts";
import { book } from "../../store/book.ts";
import { newFacts } from "../bench/jobs.ts";
import { ownFigures } from "../own-figures.ts";
import { say } from "../parts/say.ts";
import { litresAtMost } from "../words.ts";
import type { HandJob } from "./hand-job.ts";

export interface Go {
  does: string;
  to: string;
  cannot: string | null;
  onPress: () => void;
}

/** Pressed in a state in which nothing can be recorded, the button says why. */
const withReason = (go: Omit<Go, "onPress">, act: () => void): Go => ({
  ...go,
  onPress: () => (go.cannot === null ? act() : say.trouble(go.cannot)),
});

const litresRefusal = ({ meant }: HandJob["pad"], ml: number | null): string | null => {
  if (ml === null) return "Type how many litres are still in it, as 4.5.";
  const what = meant.value;
  const capacity = what.is === "one" ? (what.standing?.capacity_ml ?? null) : null;
  const most = mostThatFitsMl(capacity, ownFigures.value);
  return ml > most ? `It holds ${litresAtMost(most)} at the very most.` : null;
};

const litresGo = ({ pad, ullage }: HandJob, ml: number | null): Go => {
  const cannot = litresRefusal(pad, ml);
  return withReason({ does: "Set", to: `${pad.litres.value || "–"} L`, cannot }, () => {
    ullage?.set(ml === 0 ? null : ml);
    pad.litres.value = null;
  });
};

const isNew = (number: string): boolean => !book.containers.value.get(number)?.registered;

const refusalFor = (job: HandJob, numbers: readonly string[]): string | null => {
  if (job.refusal !== null) return job.refusal;
  const unknown = numbers.find(isNew);
  return unknown !== undefined && !newFacts().capacity_ml
    ? `How many litres does ${unknown} hold? Type it beside its kind.`
    : null;
};

/** Litres that came back belong to one container, never to all of a run. */
const runRefusal = (job: HandJob, numbers: readonly string[]): string | null =>
  job.ullage !== undefined && job.ullage.ml !== null
    ? "Beer still in it is noted for one container at a time."
    : refusalFor(job, numbers);

export const handGo = (job: HandJob, ml: number | null): Go => {
  if (job.pad.litres.value !== null) return litresGo(job, ml);
  const what = job.pad.meant.value;
  const record = (numbers: readonly string[]) => () => job.record(numbers);
  switch (what.is) {
    case "nothing":
      return withReason(
        { does: job.verb, to: "", cannot: "Type a number first." },
        () => undefined,
      );
    case "unfinished":
      return withReason({ does: job.verb, to: "", cannot: what.says }, () => undefined);
    case "several":
      return withReason(
        { does: job.verb, to: "", cannot: "Tap the head of the one that is meant." },
        () => undefined,
      );
    case "run":
      return withReason(
        {
          does: job.verb,
          to: `all ${what.numbers.length}`,
          cannot: runRefusal(job, what.numbers),
        },
        record(what.numbers),
      );
    default: {
      const verb = isNew(what.number) ? `Enter & ${job.verb.toLowerCase()}` : job.verb;
      return withReason(
        { does: verb, to: what.number, cannot: refusalFor(job, [what.number]) },
        record([what.number]),
      );
    }
  }
};
