// One full container in a list of the Cellar: who it is, the next step, and under both its sentence,
// which opens every reason when it is touched.

import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { containerHref } from "../shell/route.ts";
import { Ask } from "./Ask.tsx";
import type { Full } from "./full.ts";
import { KIND_OF, NEXT_WORDS, nextStep } from "./next.ts";
import { fullReason, fullTitle } from "./reasons.ts";
import { asking, explained } from "./state.ts";
import { takeStep } from "./take-step.ts";
import { Why } from "./Why.tsx";

const Sentence = ({ full }: { full: Full }) => {
  const { number } = full.standing;
  const open = explained.value === number;
  const says = fullReason(full, known.value);
  const tone = full.look === null ? "" : "look";
  if (full.fit() === null) return <p class={`says small ${tone}`}>{says}</p>;
  return (
    <button
      type="button"
      class={`says small ${tone}`}
      aria-expanded={open}
      onClick={() => {
        explained.value = open ? null : number;
      }}
    >
      {says}
    </button>
  );
};

export const FullLine = ({ full }: { full: Full }) => {
  const { number } = full.standing;
  const next = nextStep(full);
  const kind = KIND_OF[next];
  const asked = asking.value;
  const title = fullTitle(full, known.value);
  const fit = explained.value === number ? full.fit() : null;
  return (
    <>
      <li class="line full">
        <a class="what" href={containerHref(number)}>
          <Head look={headOf(full.standing, known.value.now)} />
          <strong>{title}</strong>
        </a>
        {(kind === null || may(kind)) && (
          <button
            type="button"
            class="button"
            aria-label={`${NEXT_WORDS[next]}: ${title}`}
            onClick={() => takeStep(number, next)}
          >
            {NEXT_WORDS[next]}
          </button>
        )}
        <Sentence full={full} />
        {fit !== null && <Why number={number} fit={fit} />}
      </li>
      {asked?.number === number && asked.under === "line" && <Ask asked={asked} />}
    </>
  );
};
