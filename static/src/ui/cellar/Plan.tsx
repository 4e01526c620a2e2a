// Back from a sale: which casks can be on sale by then, what each needs by when, and picking them.

import { useState } from "preact/hooks";
import type { Planned } from "../../domain/cellar/plan.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { Lines } from "../parts/Line.tsx";
import { More } from "../parts/More.tsx";
import { showWorking } from "../parts/working.ts";
import { containerHref, hrefTo } from "../shell/route.ts";
import { beerOfGyle, count, timeWords } from "../words.ts";
import { ChooseBeer } from "./ChooseBeer.tsx";
import { jobWords, plannedWords } from "./plan.ts";
import { chosenDay, jobs, picked, plan, saleAt, saleClock, saleDay } from "./plan-state.ts";
import { Slices } from "./Slices.tsx";
import { pick, takeBack } from "./take-job.ts";

const When = () => (
  <div class="when">
    <Field
      label="On sale by"
      type="date"
      value={saleDay.value}
      onValue={(day) => {
        chosenDay.value = day;
      }}
    />
    <div class="field">
      <label for="sale-clock">Time</label>
      <input
        id="sale-clock"
        type="time"
        value={saleClock.value}
        onInput={(event) => {
          saleClock.value = event.currentTarget.value;
        }}
      />
    </div>
  </div>
);

/** One cask: its sentence opens to all that is to do, and its button picks it or takes it back. */
const Row = ({ row, picked }: { row: Planned; picked: boolean }) => {
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
      {(row.can || picked) && (
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

export const Plan = () => {
  const { now } = known.value;
  const worked = plan.value;
  const at = saleAt.value;
  const inPlan = picked.value;
  const taken = new Set(inPlan.map(({ number }) => number));
  const rows = (worked?.result.casks ?? []).filter(({ number }) => !taken.has(number));
  const can = rows.filter((row) => row.can);
  const cannot = rows.filter((row) => !row.can);
  const lines = (heading: string, some: readonly Planned[]) =>
    some.length > 0 && (
      <Lines heading={heading} count={some.length}>
        <Slices
          items={some}
          size={12}
          each={(row) => <Row key={row.number} row={row} picked={taken.has(row.number)} />}
        />
      </Lines>
    );
  return (
    <div class="close">
      <When />
      <div class="above">
        <ChooseBeer />
      </div>
      {worked === null && (
        <p class="none look" role="alert">
          {at === null ? "Choose a day and a time." : "That time has passed. Choose a later one."}
        </p>
      )}
      {worked !== null && can.length === 0 && (
        <p class="none">
          No {taken.size === 0 ? "" : "other "}cask can be on sale by{" "}
          {timeWords(worked.result.sale_at, now)}.
        </p>
      )}
      {lines("Picked", inPlan)}
      {worked !== null && lines(`Can be on sale ${timeWords(worked.result.sale_at, now)}`, can)}
      {cannot.length > 0 && (
        <More label={`${count(cannot.length, "cask")} not by then`}>
          {lines("Not by then", cannot)}
        </More>
      )}
      <div class="form">
        {worked !== null && (
          <Button
            onPress={() =>
              showWorking("A plan for a sale", worked, ...(jobs.value === null ? [] : [jobs.value]))
            }
          >
            How it is worked out
          </Button>
        )}
        <a class="button" href={hrefTo("cellar")}>
          Back to the Cellar
        </a>
      </div>
    </div>
  );
};
