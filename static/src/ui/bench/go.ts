// What the big button does now, and what stands on it.

import { book } from "../../store/book.ts";
import { say } from "../parts/say.ts";
import { typedMl } from "../words.ts";
import { JOBS, refusal } from "./jobs.ts";
import { recordJob, recordMove } from "./record.ts";
import { job, meant, moving, typed, typingLitres, volumeMl } from "./state.ts";

export interface Go {
  does: string;
  to: string;
  cannot: string | null;
  onPress: () => void;
}

/** Pressed in a state in which nothing can be noted, the button says why. */
const withReason = (go: Omit<Go, "onPress">, act: () => void): Go => ({
  ...go,
  onPress: () => (go.cannot === null ? act() : say.trouble(go.cannot)),
});

const litresGo = (text: string): Go => {
  const ml = typedMl(text);
  const cannot = ml === null || ml === 0 ? "Type how many litres go in, as 36.5." : null;
  return withReason({ does: "Set", to: text === "" ? "litres" : `${text} L`, cannot }, () => {
    volumeMl.value = ml;
    typingLitres.value = null;
  });
};

const refusalOf = (numbers: readonly string[]): string | null => {
  for (const number of numbers) {
    const cannot = refusal(number, book.containers.value.get(number) ?? null);
    if (cannot !== null) return cannot;
  }
  return null;
};

const moveGo = (): Go => {
  const what = meant.value;
  const to = what.is === "one" ? what.number : "";
  const cannot = what.is === "one" ? null : "Type the number that it really was.";
  return withReason({ does: "Move to", to, cannot }, () => void recordMove(to));
};

export const goOf = (): Go => {
  if (typingLitres.value !== null) return litresGo(typingLitres.value);
  if (moving.value !== null) return moveGo();
  const { verb } = JOBS[job.value];
  const what = meant.value;
  switch (what.is) {
    case "nothing":
      return { does: verb, to: "", cannot: "Type a number first.", onPress: () => {} };
    case "unfinished":
      return withReason({ does: verb, to: typed.value, cannot: what.says }, () => {});
    case "several": {
      const cannot = `${typed.value} fits ${what.numbers.join(" and ")}. Tap the head that is meant.`;
      return withReason({ does: verb, to: "which?", cannot }, () => {});
    }
    case "run":
      return withReason(
        { does: verb, to: `all ${what.numbers.length}`, cannot: refusalOf(what.numbers) },
        () => void recordJob(what.numbers),
      );
    default: {
      const isNew = job.value !== "fine" && !what.standing?.registered;
      return withReason(
        {
          does: isNew ? `Enter & ${verb.toLowerCase()}` : verb,
          to: what.number,
          cannot: refusalOf([what.number]),
        },
        () => void recordJob([what.number]),
      );
    }
  }
};
