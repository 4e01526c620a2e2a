// What the labels of a gyle say if it is racked today, before there is a cask to read it on.

import { LabelWords } from "../../container/LabelWords.tsx";
import { labelOfGyle } from "../../container/label.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { More } from "../../parts/More.tsx";

export const GyleLabel = ({ id, title }: { id: string; title: string }) => {
  const label = labelOfGyle(id, known.value, ownFigures.value);
  return label === null ? null : (
    <More label="Its labels, if racked today">
      <LabelWords of={title} label={label} />
    </More>
  );
};
