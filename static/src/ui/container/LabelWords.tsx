// The words for a label, each with what it is, what is not known yet, and how it was worked out.

import { Button } from "../parts/Button.tsx";
import { type AnyWorked, showWorking } from "../parts/working.ts";
import { hrefTo } from "../shell/route.ts";
import { listWords } from "../words.ts";
import type { Label, LabelLine } from "./label.ts";

export const LabelWords = (props: {
  of: string;
  label: Label;
  more?: readonly LabelLine[];
  worked?: readonly AnyWorked[];
}) => {
  const { of, label } = props;
  const worked = [...label.worked, ...(props.worked ?? [])];
  return (
    <div class="why facts">
      <dl>
        {[...label.lines, ...(props.more ?? [])].map(({ what, says }) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      {label.missing.length > 0 && (
        <p class="look">
          Not entered: {listWords(label.missing)}.{" "}
          <a href={hrefTo("office", "beers")}>Enter it with the beer</a>
        </p>
      )}
      {worked.length > 0 && (
        <Button onPress={() => showWorking(`The label of ${of}`, ...worked)}>
          How it is worked out
        </Button>
      )}
    </div>
  );
};
