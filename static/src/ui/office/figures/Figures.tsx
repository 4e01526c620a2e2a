// The figures that this brewery may set: each with its default, how far that can be trusted, and
// where it comes from. A brewery's own value counts on every phone; its default is one tap away.

import { FIGURES, type FigureId } from "../../../domain/figures.ts";
import { Nothing } from "../../cellar/Nothing.tsx";
import { ownFigures } from "../../own-figures.ts";
import { figureName, kindWords, standingValue, valueWords } from "../../parts/figure-words.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { useSources } from "../../parts/sources.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { FigureForm } from "./FigureForm.tsx";
import { isSettable, SETTABLE } from "./setting.ts";

const FigureLine = ({ id, kind }: { id: FigureId; kind: string }) => {
  const figure = FIGURES[id];
  const own = ownFigures.value;
  const says = own[id] === undefined ? kind : `Set by this brewery, default ${figure.value}`;
  return (
    <Line
      title={figureName(id)}
      reason={`${valueWords(standingValue(id, figure, own), figure.unit)}. ${says}`}
      href={hrefTo("office", "figures", id)}
    />
  );
};

const kindOf = (about: { kind: string; source: string | null } | undefined): string =>
  about ? kindWords(about.kind, about.source) : "";

const FigureList = () => {
  useTitle("Figures");
  const sources = useSources();
  const own = SETTABLE.filter((id) => ownFigures.value[id] !== undefined);
  const usual = SETTABLE.filter((id) => ownFigures.value[id] === undefined);
  const groups = [
    { heading: "Set by this brewery", ids: own },
    { heading: "As usual", ids: usual },
  ];
  return (
    <div class="sections">
      {groups.map(({ heading, ids }) =>
        ids.length === 0 ? null : (
          <Lines key={heading} heading={heading} count={ids.length}>
            {ids.map((id) => (
              <FigureLine key={id} id={id} kind={kindOf(sources?.[id])} />
            ))}
          </Lines>
        ),
      )}
    </div>
  );
};

export const Figures = ({ id }: { id: string | undefined }) => {
  if (id === undefined) return <FigureList />;
  if (!isSettable(id)) return <Nothing says="There is no such figure to set." />;
  return <FigureForm key={id} id={id} />;
};
