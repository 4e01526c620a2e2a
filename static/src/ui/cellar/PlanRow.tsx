// One cask of a plan: its sentence opens to all that is to do, and its button picks it or takes it
// back.

import { useState } from "preact/hooks";
import type { Planned } from "../../domain/cellar/plan.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { containerHref } from "../shell/route.ts";
import { beerOfGyle, timeWords } from "../words.ts";
import { jobWords, plannedWords } from "./plan.ts";
import { pick, takeBack } from "./take-job.ts";

export const PlanRow = ({ row, picked }: { row: Planned; picked: boolean }) => {
  const [open, setOpen] = useState(false);
  const { number } = row;
  const { now } = known.value;
  const standing = book.containers.value.get(number);
  if (standing?.contents == null) return null;
  const title = `${number} ${beerOfGyle(known.value, standing.contents.gyle)}`;
  const does = picked ? "Take back" : "Pick";
  return (
    <li class="line full">
      <a class="what" href={containerHref(number)}>
        <Head look={headOf(standing, now)} />
        <strong>{title}</strong>
      </a>
      {(row.can || picked) && may("planned") && (
        <button
          type="button"
          class="button"
          aria-label={`${does}: ${title}`}
          onClick={() => void (picked ? takeBack(number) : pick(number, row.sale_at, now))}
        >
          {does}
        </button>
      )}
      <button
        type="button"
        class={`says small ${row.can ? "" : "look"}`}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        {picked && standing.planned !== null
          ? `Picked for ${timeWords(standing.planned.sale_at, now)}. `
          : ""}
        {plannedWords(row, now)}
      </button>
      {open && (
        <ol class="why">
          {row.jobs.map((job) => (
            <li key={job.step}>{jobWords(job, now)}</li>
          ))}
          <li>Off by {timeWords(row.off_by_at, now)}.</li>
        </ol>
      )}
    </li>
  );
};
