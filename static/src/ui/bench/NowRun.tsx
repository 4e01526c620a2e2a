// A run such as 117 to 124: what is odd about any of them, before all are done with one tap.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Lazy } from "../shell/Lazy.tsx";
import { tryOut } from "../try-out.ts";
import { count, listWords, litres, outcomeRemarks } from "../words.ts";
import { shortWords } from "./gyles.ts";
import { capacityOf, deedsFor, JOBS } from "./jobs.ts";
import { NEW_CONTAINER } from "./new-container.ts";
import { StandsIn } from "./StandsIn.tsx";
import { gyleId, job, volumeMl } from "./state.ts";

const standingOf = (number: string) => book.containers.value.get(number) ?? null;

/** "117: not washed …" for each that has something odd; the same words only once, with all numbers. */
const oddities = (numbers: readonly string[]): [string, string[]][] => {
  const found = new Map<string, string[]>();
  for (const number of numbers) {
    const standing = standingOf(number);
    const outcome = tryOut(number, standing, deedsFor(standing), known.value.now);
    for (const remark of outcomeRemarks(outcome, known.value, JOBS[job.value].doing)) {
      if (remark.tone !== "look") continue;
      found.set(remark.says, [...(found.get(remark.says) ?? []), number]);
    }
  }
  return [...found];
};

const unknownWords = (numbers: readonly string[]): string =>
  `${listWords(numbers)} ${numbers.length === 1 ? "is" : "are"} not on record. What ${numbers.length === 1 ? "is it" : "are they"}?`;

const oddCount = (odd: readonly [string, string[]][]): number =>
  new Set(odd.flatMap(([, those]) => those)).size;

export const NowRun = ({ numbers }: { numbers: readonly string[] }) => {
  const unknown = numbers.filter((number) => !standingOf(number)?.registered);
  const ml = numbers.reduce(
    (sum, n) => sum + (volumeMl.value ?? capacityOf(standingOf(n)) ?? 0),
    0,
  );
  const odd = oddities(numbers);
  const short = job.value === "fill" ? shortWords(book.gyles.value.get(gyleId.value), ml) : "";
  return (
    <div class="now run">
      <p>
        <strong>
          {numbers[0]} to {numbers.at(-1)}
        </strong>
        , {count(numbers.length, "container")}
        {job.value === "fill" && `, ${litres(ml)}`}
      </p>
      {short && <p class="look">{short}</p>}
      {unknown.length > 0 && (
        <>
          <p class="look">{unknownWords(unknown)}</p>
          <Lazy screen={NEW_CONTAINER} path={[]} />
        </>
      )}
      {odd.length === 0 && unknown.length === 0 && (
        <p class="fine">Nothing odd about any of them.</p>
      )}
      {odd.length > 0 && <p>{oddCount(odd)} of them want a look:</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and keys must be able to */}
      <ul tabIndex={0} aria-label="What is odd about them">
        {odd.map(([says, those]) => (
          <li key={says} class="look">
            <b>{those.join(", ")}</b>: {says}
          </li>
        ))}
      </ul>
      {job.value === "fill" && <StandsIn />}
    </div>
  );
};
