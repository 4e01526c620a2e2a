// One container on the stillage: what it is, how it stands, and all that is done with it there.

import { fullTitle } from "../cellar/reasons.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { useInView } from "../parts/in-view.ts";
import { containerHref } from "../shell/route.ts";
import { sentence } from "../words.ts";
import { deedsFor, deedWords, KIND_OF, WHY_OFF } from "./deeds.ts";
import { Ends } from "./Ends.tsx";
import type { Served } from "./lists.ts";
import { barWords } from "./reasons.ts";
import { takingOff } from "./state.ts";
import { takeDeed, takeOff } from "./take-deed.ts";

const WhyOff = ({ number }: { number: string }) => (
  <fieldset class="why-off opened" ref={useInView<HTMLFieldSetElement>()}>
    <legend>Take {number} off. Why?</legend>
    <div class="buttons">
      {WHY_OFF.map((why) => (
        <button type="button" class="button" key={why} onClick={() => void takeOff(number, why)}>
          {why === "off" ? "Gone off" : sentence(why)}
        </button>
      ))}
    </div>
  </fieldset>
);

export const ServedLine = ({ served }: { served: Served }) => {
  const { number } = served.standing;
  const { now } = known.value;
  const title = fullTitle(served, known.value);
  const look = served.ready.stage === "past" || served.standing.held !== null;
  const mine = deedsFor(served).filter((deed) => may(KIND_OF[deed]));
  const asking = takingOff.value === number;
  return (
    <li class="served">
      <a class="what" href={containerHref(number)}>
        <Head look={headOf(served.standing, now)} />
        <div>
          <p>
            <strong>{title}</strong>
          </p>
          <p class={`small ${look ? "look" : ""}`}>{barWords(served, known.value)}</p>
        </div>
      </a>
      <div class="buttons">
        {mine.map((deed) => (
          <button
            type="button"
            class="button"
            key={deed}
            aria-label={`${deedWords(deed, served)}: ${title}`}
            aria-expanded={deed === "off" ? asking : undefined}
            onClick={() => takeDeed(number, deed)}
          >
            {deedWords(deed, served)}
          </button>
        ))}
      </div>
      {asking && <WhyOff number={number} />}
      <Ends number={number} keg={served.standing.shape === "keg"} />
    </li>
  );
};
