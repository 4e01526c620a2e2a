// One figure: what it is, what is known of it, and the brewery's own value in its place.

import { useState } from "preact/hooks";
import { FIGURES, type FigureId } from "../../../domain/figures.ts";
import { book } from "../../../store/book.ts";
import { may } from "../../mine.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Field } from "../../parts/Field.tsx";
import { kindWords, standingValue, valueWords } from "../../parts/figure-words.ts";
import { NotMine } from "../../parts/NotMine.tsx";
import { save } from "../../parts/say.ts";
import { useSources } from "../../parts/sources.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
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

  const record = async (text: string, facts: object) => {
    if (await save(text, () => book.record("setting", id, facts))) goOnTo("office", "figures");
  };
  const keep = () => {
    const read = readFigure(figure, typed);
    if ("fault" in read) return setFault(read.fault);
    // A value given up before counts again once another is set.
    return void record(`${name} is now ${valueWords(read.value, unit)}.`, {
      ...read.facts,
      retired: false,
    });
  };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
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
      <NotMine kind="setting" />
      {may("setting") && (
        <button type="submit" class="button main wide">
          Keep it
        </button>
      )}
      {isOwn && may("setting") && (
        <Button onPress={() => void record(`${name} is as usual again.`, { retired: true })}>
          Back to the default
        </Button>
      )}
    </form>
  );
};
