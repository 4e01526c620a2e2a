// A run such as 117 to 124: the same remark is said once, with all the numbers it is true of.

import { book } from "../../store/book.ts";
import NewContainer from "../bench/NewContainer.tsx";
import { count, listWords } from "../words.ts";
import type { HandJob } from "./hand-job.ts";

const byRemark = (numbers: readonly string[], job: HandJob) => {
  const found = new Map<string, { numbers: string[]; tone: string }>();
  for (const number of numbers) {
    for (const { says, tone } of job.remarks(book.containers.value.get(number) ?? null)) {
      const there = found.get(says);
      if (there) there.numbers.push(number);
      else found.set(says, { numbers: [number], tone });
    }
  }
  return [...found];
};

export const HandRun = ({ numbers, job }: { numbers: readonly string[]; job: HandJob }) => {
  const unknown = numbers.filter((number) => !book.containers.value.get(number)?.registered);
  return (
    <div class="now run">
      <p>
        <strong>
          {numbers[0]} to {numbers.at(-1)}
        </strong>
        , {count(numbers.length, "container")}
      </p>
      {unknown.length > 0 && (
        <>
          <p class="look">
            {listWords(unknown)} {unknown.length === 1 ? "is" : "are"} not on record. What are they?
          </p>
          <NewContainer />
        </>
      )}
      <ul>
        {byRemark(numbers, job).map(([says, { numbers: those, tone }]) => (
          <li key={says} class={tone || "small"}>
            <b>{those.length === numbers.length ? "All" : listWords(those, 8)}</b>: {says}
          </li>
        ))}
      </ul>
    </div>
  );
};
