// When a full container is fit for what, each time with its reason.

import type { Standing } from "../../domain/standing.ts";
import { fitOf } from "../cellar/fit.ts";
import { Why } from "../cellar/Why.tsx";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { More } from "../parts/More.tsx";

export const Ready = ({ standing }: { standing: Standing }) => {
  const here = standing.contents !== null && standing.trip === null;
  const fit = here ? fitOf(standing, known.value, ownFigures.value) : null;
  if (fit === null) return null;
  return (
    <More label="When it is ready, and why">
      <div class="facts">
        <Why number={standing.number} fit={fit} />
      </div>
    </More>
  );
};
