// Back from a sale: which casks can be on sale by then, what each needs by when, and picking them.

import type { Planned } from "../../domain/cellar/plan.ts";
import { known } from "../known.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Lines } from "../parts/Line.tsx";
import { More } from "../parts/More.tsx";
import { showWorking } from "../parts/working.ts";
import { hrefTo } from "../shell/route.ts";
import { count, timeWords } from "../words.ts";
import { ChooseBeer } from "./ChooseBeer.tsx";
import { PlanRow } from "./PlanRow.tsx";
import { chosenDay, jobs, picked, plan, saleAt, saleClock, saleDay } from "./plan-state.ts";
import { Slices } from "./Slices.tsx";

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
          each={(row) => <PlanRow key={row.number} row={row} picked={taken.has(row.number)} />}
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
