// The Cellar: what is to do today, then every full container at the brewery, what is ready first.

import type { ComponentType } from "preact";
import { Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { hrefTo } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { useTitle } from "../shell/title.ts";
import { count } from "../words.ts";
import { ChooseBeer } from "./ChooseBeer.tsx";
import { FullLine } from "./FullLine.tsx";
import type { Full } from "./full.ts";
import { Plan } from "./Plan.tsx";
import { jobs } from "./plan-state.ts";
import { Slices } from "./Slices.tsx";
import { beers, lists } from "./state.ts";
import { Temperatures } from "./Temperatures.tsx";
import { TempHead } from "./TempHead.tsx";
import { TodaysJobs } from "./TodaysJobs.tsx";

const FullLines = (props: { heading: string; fulls: readonly Full[]; id?: string }) =>
  props.fulls.length === 0 ? null : (
    <div id={props.id} tabIndex={props.id ? -1 : undefined}>
      <Lines heading={props.heading} count={props.fulls.length}>
        <Slices
          items={props.fulls}
          size={12}
          each={(full) => <FullLine key={full.standing.number} full={full} />}
        />
      </Lines>
    </div>
  );

const LOOK = "look-at-these";

/** What stands last is not forgotten: it is named first. */
const ToLook = ({ n }: { n: number }) =>
  n === 0 ? null : (
    <button
      type="button"
      class="button to-look"
      onClick={() => {
        const there = document.getElementById(LOOK);
        there?.scrollIntoView();
        there?.focus({ preventScroll: true });
      }}
    >
      {count(n, "to look at", "to look at")}
    </button>
  );

/** With no jobs today the way to the plan says how many are to come. */
const planWords = (): string => {
  const found = jobs.value?.result;
  return found === undefined || found.jobs.length > 0 || found.later === 0
    ? "Plan a sale"
    : `Plan: ${found.later} to do`;
};

const Everything = () => {
  const { ready, later, stillage, look } = lists.value;
  if (beers.value.length === 0) {
    return (
      <>
        <TempHead />
        <Nothing says="No full container is in the brewery. Beer is racked at the Bench.">
          <a class="button main" href={hrefTo("bench")}>
            To the Bench
          </a>
        </Nothing>
      </>
    );
  }
  return (
    <div class="close">
      <NotMine kind="stillaged" />
      <TempHead />
      <TodaysJobs />
      <div class="above">
        <ChooseBeer />
        <ToLook n={look.length} />
        <a class="button" href={hrefTo("cellar", "plan")}>
          {planWords()}
        </a>
        <a class="button" href={hrefTo("out", "send")}>
          Send out
        </a>
      </div>
      {ready.length === 0 && <p class="none">Nothing is ready now.</p>}
      <FullLines heading="Ready now" fulls={ready} />
      <FullLines heading="On the stillage" fulls={stillage} />
      <FullLines heading="Ready next" fulls={later} />
      <FullLines heading="Look at these" fulls={look} id={LOOK} />
    </div>
  );
};

const PARTS: { readonly [name: string]: { title: string; Shown: ComponentType } } = {
  plan: { title: "Plan for a sale", Shown: Plan },
  temperatures: { title: "Temperatures", Shown: Temperatures },
};

const Part = ({ title, Shown }: { title: string; Shown: ComponentType }) => {
  useTitle(title);
  return <Shown />;
};

export default ({ path }: ScreenProps) => {
  const part = PARTS[path[0] ?? ""];
  return part === undefined ? <Everything /> : <Part {...part} />;
};
