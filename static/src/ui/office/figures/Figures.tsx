// The figures that this brewery may set: each with its default, how far that can be trusted, and
// where it comes from. A brewery's own value counts on every phone; its default is one tap away.

import { FIGURES, type FigureId } from "../../../domain/figures.ts";
import { ownFigures } from "../../own-figures.ts";
import { Empty } from "../../parts/Empty.tsx";
import { figureWords, kindWords, standingValue } from "../../parts/figure-words.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { type Sources, useSources } from "../../parts/sources.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { BarHours } from "./BarHours.tsx";
import { FigureForm } from "./FigureForm.tsx";
import { isSettable, SETTABLE, typedFigure } from "./setting.ts";

const FigureLine = ({ id, about }: { id: FigureId; about: Sources[string] | undefined }) => {
  const figure = FIGURES[id];
  const own = ownFigures.value;
  const kind = about && id !== "bar_hours" ? kindWords(about.kind, about.source) : "";
  const says =
    own[id] === undefined || id === "bar_hours"
      ? kind
      : `Set by this brewery, default ${typedFigure(figure.value)}`;
  return (
    <Line
      title={about?.name ?? id}
      reason={`${figureWords(id, standingValue(id, figure, own), about?.unit ?? "")}. ${says}`.trim()}
      href={hrefTo("office", "figures", id)}
    />
  );
};

const byName = (sources: Sources): FigureId[] =>
  [...SETTABLE].sort((a, b) => ((sources[a]?.name ?? a) < (sources[b]?.name ?? b) ? -1 : 1));

const FigureList = () => {
  useTitle("Figures");
  const sources = useSources();
  if (sources === null) return <Empty says="One moment…" />;
  const all = byName(sources);
  const own = all.filter((id) => ownFigures.value[id] !== undefined);
  const usual = all.filter((id) => ownFigures.value[id] === undefined);
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
              <FigureLine key={id} id={id} about={sources[id]} />
            ))}
          </Lines>
        ),
      )}
    </div>
  );
};

export const Figures = ({ id }: { id: string | undefined }) => {
  if (id === undefined) return <FigureList />;
  if (!isSettable(id)) return <Empty says="There is no such figure to set." />;
  return id === "bar_hours" ? <BarHours /> : <FigureForm key={id} id={id} />;
};
