// One figure: what it is, what is known of it, and the brewery's own value in its place.

import { useState } from "preact/hooks";
import { FIGURES, type FigureId } from "../../../domain/figures.ts";
import { ownFigures } from "../../own-figures.ts";
import { Field } from "../../parts/Field.tsx";
import { kindWords, standingValue, valueWords } from "../../parts/figure-words.ts";
import { useSources } from "../../parts/sources.ts";
import { useTitle } from "../../shell/title.ts";
import { SettingForm } from "../SettingForm.tsx";
import { hintWords, isList, readFigure, typedFigure } from "./setting.ts";

const About = ({ id }: { id: FigureId }) => {
  const sources = useSources();
  const { value } = FIGURES[id];
  if (sources === null) return <p class="small">One moment…</p>;
  const { unit = "", kind = "", source = null, remark = "" } = sources[id] ?? {};
  return (
    <>
      <p>
        Default: <b>{valueWords(value, unit)}</b>
      </p>
      <p>
        {kindWords(kind, source)}
        {source === null ? "." : `: ${source}.`}
      </p>
      <p class="small">{remark}</p>
    </>
  );
};

export const FigureForm = ({ id }: { id: FigureId }) => {
  const about = useSources()?.[id];
  const unit = about?.unit ?? "";
  const figure = { ...FIGURES[id], unit };
  const name = about?.name ?? "Figure";
  useTitle(name);
  const [typed, setTyped] = useState(typedFigure(standingValue(id, figure, ownFigures.value)));
  const [fault, setFault] = useState<string | null>(null);
  const isOwn = ownFigures.value[id] !== undefined;

  const read = () => {
    const found = readFigure(figure, typed);
    if ("fault" in found) {
      setFault(found.fault);
      return null;
    }
    return { says: `${name} is now ${valueWords(found.value, unit)}.`, facts: found.facts };
  };
  return (
    <SettingForm
      id={id}
      section="figures"
      read={read}
      back={isOwn ? { label: "Back to the default", says: `${name} is as usual again.` } : null}
    >
      <About id={id} />
      <Field
        label={`This brewery's ${isList(figure) ? "values" : "value"}, ${unit}`}
        hint={hintWords(figure)}
        {...(isList(figure) ? {} : { type: "decimal" as const })}
        value={typed}
        onValue={setTyped}
        fault={fault}
      />
    </SettingForm>
  );
};
