// Every reason behind a container's times, each in a sentence; estimates are called so.

import { Button } from "../parts/Button.tsx";
import { showWorking } from "../parts/working.ts";
import type { Fit, ReasonOf } from "./fit.ts";

const HEADINGS: { readonly [of in ReasonOf]: string } = {
  conditioned_from_at: "Conditioned",
  cool_from_at: "Cool",
  settled_from_at: "Settled",
  ready_from_at: "Can be sold",
  best_until_at: "Best until",
  off_by_at: "Off by",
};

/** Of a keg nothing settles and nothing has to be cool: what says nothing is left out. */
const told = (fit: Fit) =>
  fit.result.reasons.filter(({ reason }) => reason !== "keg" && reason !== "not_needed");

export const Why = ({ number, fit }: { number: string; fit: Fit }) => (
  <div class="why">
    <dl>
      {told(fit).map(({ of, sure, says }) => (
        <div key={of}>
          <dt>
            {HEADINGS[of]}
            {sure === "estimate" && <span class="guess"> (estimate)</span>}
          </dt>
          <dd>{says}</dd>
        </div>
      ))}
    </dl>
    <Button onPress={() => showWorking(`When ${number} is ready`, fit)}>
      How it is worked out
    </Button>
  </div>
);
