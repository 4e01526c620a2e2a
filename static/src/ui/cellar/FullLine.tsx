// One full container in a list of the Cellar.

import { known } from "../known.ts";
import { headOf } from "../parts/head-of.ts";
import { Line } from "../parts/Line.tsx";
import { containerHref } from "../shell/route.ts";
import { Ask } from "./Ask.tsx";
import type { Full } from "./full.ts";
import { NEXT_WORDS, nextStep } from "./next.ts";
import { fullReason, fullTitle } from "./reasons.ts";
import { asking } from "./state.ts";
import { takeStep } from "./take-step.ts";

export const FullLine = ({ full }: { full: Full }) => {
  const { number } = full.standing;
  const next = nextStep(full);
  const asked = asking.value;
  return (
    <>
      <Line
        look={headOf(full.standing, known.value.now)}
        title={fullTitle(full, known.value)}
        reason={fullReason(full, known.value)}
        {...(full.look === null ? {} : { tone: "look" as const })}
        href={containerHref(number)}
        action={{ label: NEXT_WORDS[next], onPress: () => takeStep(number, next) }}
      />
      {asked?.number === number && <Ask asked={asked} />}
    </>
  );
};
