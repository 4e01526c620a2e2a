// Under a container on sale: when it runs out, and the next step of the next one of its beer.

import { Ask } from "../cellar/Ask.tsx";
import { JOB_WORDS } from "../cellar/plan.ts";
import { asking } from "../cellar/state.ts";
import { takeJob } from "../cellar/take-job.ts";
import { known } from "../known.ts";
import { Button } from "../parts/Button.tsx";
import { showWorking } from "../parts/working.ts";
import { nextWords, runsOutWords } from "./ending-words.ts";
import { firstJob } from "./run-out.ts";
import { ending } from "./state.ts";

export const Ends = ({ number, keg }: { number: string; keg: boolean }) => {
  const found = ending.value.get(number);
  if (found === undefined) return null;
  const { now } = known.value;
  const says = `${runsOutWords(found, now)} ${nextWords(found, now, keg)}`.trim();
  if (says === "") return null;
  const job = firstJob(found);
  const asked = asking.value;
  return (
    <div class="ends">
      <p class={`small ${job?.late ? "look" : ""}`}>{says}</p>
      <div class="buttons">
        {job !== null && (
          <Button onPress={() => takeJob(job.number, job.step)}>
            {JOB_WORDS[job.step].does} {job.number}
          </Button>
        )}
        <Button
          look="quiet"
          label={`How it is worked out when ${number} runs out`}
          onPress={() => showWorking(`When ${number} runs out`, found.worked)}
        >
          How it is worked out
        </Button>
      </div>
      {job !== null && asked?.number === job.number && asked.under === "job" && (
        <ul>
          <Ask asked={asked} />
        </ul>
      )}
    </div>
  );
};
