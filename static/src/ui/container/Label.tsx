// What to write on a full container, and how it has aged: behind a heading, since it is looked at
// when it is labelled or asked about.

import type { Standing } from "../../domain/standing.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { More } from "../parts/More.tsx";
import { LabelWords } from "./LabelWords.tsx";
import { agedOf, labelOf } from "./label.ts";

export const Label = ({ standing }: { standing: Standing }) => {
  const label = labelOf(standing, known.value, ownFigures.value);
  if (label === null) return null;
  const aged = agedOf(standing, known.value, ownFigures.value);
  const age = aged === null ? [] : [{ what: "Age", says: aged.says }];
  return (
    <More label="Its label, and how it has aged">
      <LabelWords
        of={standing.number}
        label={label}
        more={age}
        worked={aged === null ? [] : [aged.worked]}
      />
    </More>
  );
};
