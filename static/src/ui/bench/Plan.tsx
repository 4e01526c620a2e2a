// The plan of a racking and then its sheet: how many of each, what is left, the doses, what to draw.

import { signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Empty } from "../parts/Empty.tsx";
import { showWorking } from "../parts/working.ts";
import { formAndBack, hrefTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { beerDoc, brewName, litres, sentence } from "../words.ts";
import { Expect } from "./Expect.tsx";
import { leftMl } from "./gyles.ts";
import { usedLots } from "./lots-used.ts";
import {
  fillWords,
  leftWords,
  planOf,
  type Row,
  rowName,
  rowsHere,
  sizesIn,
  unknownWords,
  unmetWords,
  type Wishes,
  washedWords,
} from "./racking-plan.ts";
import { Sheet } from "./Sheet.tsx";
import { gyleId } from "./state.ts";
import { behindRates } from "./trial/lots-tried.ts";

/** Outlive a look at another screen. */
const wishes = signal<Wishes>({});
/** Somebody has said that what has no wash on record is clean. */
const unknownToo = signal(false);

const wish = (key: string, by: number): void => {
  const now = wishes.peek();
  wishes.value = { ...now, [key]: Math.min(200, Math.max(0, (now[key] ?? 0) + by)) };
};

const Stepper = ({ row, fill }: { row: Row; fill: number }) => {
  const wished = wishes.value[row.key] ?? 0;
  return (
    <li class="line">
      <div class="what">
        <div>
          <p>
            <strong>{fill}</strong> × {rowName(row)}
          </p>
          <p class="small">
            {washedWords(row)}
            {wished > 0 ? `, ${wished} wished` : ""}
          </p>
        </div>
      </div>
      <button
        type="button"
        class="button"
        aria-label={`Wish one ${rowName(row)} less`}
        onClick={() => wish(row.key, -1)}
      >
        −
      </button>
      <button
        type="button"
        class="button"
        aria-label={`Wish one ${rowName(row)} more`}
        onClick={() => wish(row.key, 1)}
      >
        +
      </button>
    </li>
  );
};

const Planned = ({ id, vesselMl }: { id: string; vesselMl: number }) => {
  const gyle = known.value.gyles.get(id)?.fields ?? {};
  const all = unknownToo.value;
  const rows = rowsHere(book.containers.value.values(), all);
  const plan = planOf(rows, vesselMl, gyle.loss_ml ?? 0, wishes.value, ownFigures.value, all);
  const unknown = unknownWords(rows, all);
  const unmet = unmetWords(plan);
  const racked = {
    beer: beerDoc(known.value, id)?.fields ?? {},
    gyle,
    sizes: sizesIn(plan),
    settings: ownFigures.value,
    lots: book.lots.value,
    next: usedLots.value,
    tried: behindRates(book.trials.value, gyle.beer ?? "", known.value, ownFigures.value),
  };
  return (
    <>
      <section class="form" aria-live="polite">
        <p>
          <strong>{sentence(fillWords(plan))}</strong>
        </p>
        <p>{leftWords(plan)}</p>
        {unmet && <p class="look">{unmet}</p>}
        {unknown && (
          <>
            <p class="look">{unknown}</p>
            <button
              type="button"
              class="button"
              onClick={() => {
                unknownToo.value = !all;
              }}
            >
              {all ? "Plan without them" : "They are clean: plan with them"}
            </button>
          </>
        )}
        <p class="small">
          {litres(vesselMl)} in the vessel
          {gyle.loss_ml === undefined ? "." : `, ${litres(gyle.loss_ml)} stay behind.`}
        </p>
        {gyle.loss_ml === undefined && (
          <a class="button" href={formAndBack("gyles", id)}>
            Enter what stays behind
          </a>
        )}
        <button type="button" class="button" onClick={() => showWorking("The plan", plan.worked)}>
          How it is worked out
        </button>
      </section>
      <section class="lines">
        <h2>
          {all ? "Here" : "Clean and here"} <span>− and + for what you wish</span>
        </h2>
        <ul>
          {plan.fills.map(({ row, fill }) => (
            <Stepper key={row.key} row={row} fill={fill} />
          ))}
        </ul>
      </section>
      {racked.sizes.length > 0 && (
        <>
          <Sheet racked={racked} />
          <Expect racked={racked} />
        </>
      )}
      <div class="form">
        <a class="button main wide" href={hrefTo("bench")}>
          To the pad
        </a>
        {gyle.beer && (
          <a class="button" href={hrefTo("bench", "trials", gyle.beer)}>
            Finings trials of this beer
          </a>
        )}
      </div>
    </>
  );
};

const Plan = () => {
  useTitle("Plan");
  const id = gyleId.value;
  const gyle = book.gyles.value.get(id);
  if (gyle === undefined) {
    return (
      <Empty says="No gyle is chosen yet.">
        <a class="button main" href={hrefTo("bench")}>
          Choose a gyle
        </a>
      </Empty>
    );
  }
  const left = leftMl(gyle);
  if (left === null) {
    return (
      <Empty says="How many litres there are of this gyle is not entered.">
        <a class="button main" href={formAndBack("gyles", id)}>
          Enter the litres
        </a>
      </Empty>
    );
  }
  if (left <= 0) return <Empty says="All of this gyle is racked." />;
  return (
    <>
      <p class="form small">{brewName(known.value, id)}</p>
      <Planned id={id} vesselMl={left} />
    </>
  );
};

export default Plan;
