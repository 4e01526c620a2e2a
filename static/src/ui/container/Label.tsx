// What to write on a full container, and how it has aged: behind a heading, since it is looked at
// when it is labelled or asked about.

import type { Standing } from "../../domain/standing.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Button } from "../parts/Button.tsx";
import { More } from "../parts/More.tsx";
import { showWorking } from "../parts/working.ts";
import { hrefTo } from "../shell/route.ts";
import { listWords } from "../words.ts";
import { agedOf, labelOf } from "./label.ts";

export const Label = ({ standing }: { standing: Standing }) => {
  const label = labelOf(standing, known.value, ownFigures.value);
  if (label === null) return null;
  const aged = agedOf(standing, known.value, ownFigures.value);
  const worked = [...label.worked, ...(aged === null ? [] : [aged.worked])];
  return (
    <More label="Its label, and how it has aged">
      <div class="why facts">
        <dl>
          {label.lines.map(({ what, says }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{says}</dd>
            </div>
          ))}
          {aged !== null && (
            <div>
              <dt>Age</dt>
              <dd>{aged.says}</dd>
            </div>
          )}
        </dl>
        {label.missing.length > 0 && (
          <p class="look">
            Not entered: {listWords(label.missing)}.{" "}
            <a href={hrefTo("office", "beers")}>Enter it with the beer</a>
          </p>
        )}
        {worked.length > 0 && (
          <Button onPress={() => showWorking(`The label of ${standing.number}`, ...worked)}>
            How it is worked out
          </Button>
        )}
      </div>
    </More>
  );
};
