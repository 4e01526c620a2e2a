// What is to do today for the casks that were picked for sales, in order of time. With nothing to
// do it takes no room: what is for later stands on the way to the plan.

import type { Job } from "../../domain/cellar/jobs.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { containerHref, hrefTo } from "../shell/route.ts";
import { beerOfGyle, count, timeWords } from "../words.ts";
import { Ask } from "./Ask.tsx";
import { JOB_WORDS, jobWords } from "./plan.ts";
import { jobs } from "./plan-state.ts";
import { asking } from "./state.ts";
import { takeJob } from "./take-job.ts";

const OneJob = ({ job }: { job: Job }) => {
  const standing = book.containers.value.get(job.number);
  if (standing?.contents == null) return null;
  const { now } = known.value;
  const sale = standing.planned === null ? "" : ` For ${timeWords(standing.planned.sale_at, now)}.`;
  const asked = asking.value;
  return (
    <>
      <Line
        look={headOf(standing, now)}
        title={`${job.number} ${beerOfGyle(known.value, standing.contents.gyle)}`}
        reason={`${jobWords(job, now)}${sale}`}
        {...(job.late ? { tone: "look" as const } : {})}
        href={containerHref(job.number)}
        {...(may("planned")
          ? {
              action: {
                label: JOB_WORDS[job.step].does,
                onPress: () => takeJob(job.number, job.step),
              },
            }
          : {})}
      />
      {job.step === "stillage" && asked?.number === job.number && asked.under === "job" && (
        <Ask asked={asked} />
      )}
    </>
  );
};

export const TodaysJobs = () => {
  const found = jobs.value?.result;
  if (found === undefined || found.jobs.length === 0) return null;
  return (
    <Lines heading="Today's jobs" count={found.jobs.length}>
      {found.jobs.map((job) => (
        <OneJob key={`${job.number} ${job.step}`} job={job} />
      ))}
      <li class="rest">
        <a class="button wide" href={hrefTo("cellar", "plan")}>
          {found.later === 0 ? "The plan" : `${count(found.later, "job")} on later days`}
        </a>
      </li>
    </Lines>
  );
};
