// How a figure was worked out: each step with its formula, what to mind, and every figure used with
// where it comes from. A dialog of the browser's own: Escape and the back gesture close it, and the
// focus returns to the figure that was touched.

import { type ComponentType, render } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { CAUTIONS } from "../../domain/cautions.ts";
import { FIGURES, type FigureId } from "../../domain/figures.ts";
import { ownFigures } from "../own-figures.ts";
import { figureWords, kindWords, numberWords, standingValue } from "./figure-words.ts";
import { type Sources, useSources } from "./sources.ts";
import type { AnyWorked } from "./working.ts";

const Steps = ({ worked }: { worked: AnyWorked }) => (
  <ol>
    {worked.steps.map((step) => (
      <li key={step.says}>
        {step.says}{" "}
        <b>
          {numberWords(step.value)} {step.unit}
        </b>
      </li>
    ))}
  </ol>
);

const FigureUsed = ({ id, sources }: { id: FigureId; sources: Sources | null }) => {
  const figure = FIGURES[id];
  const about = sources?.[id];
  const isOwn = ownFigures.value[id] !== undefined;
  const unit = about?.unit ?? "";
  const kind = about ? kindWords(about.kind, about.source) : "";
  return (
    <li>
      <p>
        {about?.name ?? "One moment…"}:{" "}
        <b>{figureWords(id, standingValue(id, figure, ownFigures.value), unit)}</b>
      </p>
      <p class="small">
        {isOwn ? `Set by this brewery in place of ${figureWords(id, figure.value, unit)}. ` : ""}
        {kind}
        {about?.source ? `: ${about.source}.` : "."} {about?.remark}
      </p>
    </li>
  );
};

const unique = <T,>(lists: readonly (readonly T[])[]): T[] => [...new Set(lists.flat())];

const Panel = (props: {
  title: string;
  worked: readonly AnyWorked[];
  Decide: ComponentType | null;
  onClosed: () => void;
}) => {
  const { Decide, worked } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const sources = useSources();
  useEffect(() => {
    dialog.current?.showModal();
    const close = () => dialog.current?.close();
    addEventListener("hashchange", close);
    return () => removeEventListener("hashchange", close);
  }, []);
  const cautions = unique(worked.map((one) => one.cautions));
  return (
    <dialog ref={dialog} class="working" aria-labelledby="working-title" onClose={props.onClosed}>
      <header>
        <h2 id="working-title">{props.title}</h2>
        <button type="button" class="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      {Decide && <Decide />}
      {worked.length > 0 && <h3>How it is worked out</h3>}
      {worked.map((one) => (
        <Steps key={one} worked={one} />
      ))}
      {cautions.length > 0 && <h3>To mind</h3>}
      <ul>
        {cautions.map((id) => (
          <li key={id}>
            <p>{CAUTIONS[id].words}</p>
            {CAUTIONS[id].source && <p class="small">{CAUTIONS[id].source}</p>}
          </li>
        ))}
      </ul>
      {worked.length > 0 && <h3>Figures used</h3>}
      <ul>
        {unique(worked.map((one) => one.figures)).map((id) => (
          <FigureUsed key={id} id={id} sources={sources} />
        ))}
      </ul>
    </dialog>
  );
};

/** Show the panel; it takes itself away when closed. */
export const open = (
  title: string,
  worked: readonly AnyWorked[],
  Decide: ComponentType | null,
): void => {
  const host = document.body.appendChild(document.createElement("div"));
  const takeAway = () => {
    render(null, host);
    host.remove();
  };
  render(<Panel title={title} worked={worked} Decide={Decide} onClosed={takeAway} />, host);
};
