// Adding or changing a beer, a gyle, a place or a customer. Faults stand in words beside their
// fields, and what was typed stays until it is saved or left.

import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { More } from "../../parts/More.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { save } from "../../parts/say.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { sentence } from "../../words.ts";
import { newId } from "../new-id.ts";
import { BeerTrials } from "./BeerTrials.tsx";
import { draftOf, dropDraft, keepDraft } from "./drafts.ts";
import { FieldFor } from "./FieldFor.tsx";
import { GyleLabel } from "./GyleLabel.tsx";
import { LotLife } from "./LotLife.tsx";
import { docsOf, titleOf } from "./of-kind.ts";
import { Personal } from "./Personal.tsx";
import { asNew, asTyped, type Faults, readForm } from "./reading.ts";
import { Strength } from "./Strength.tsx";
import { RETIRED, type RecordSpec } from "./specs.ts";

/** Other records in use, among which the name has to be the only one. */
const othersThan = (spec: RecordSpec, id: string | null) =>
  [...docsOf(spec.kind)]
    .filter(([other, doc]) => other !== id && doc.fields.retired !== true)
    .map(([, doc]) => doc);

const Retire = (props: { spec: RecordSpec; id: string; title: string; retired: boolean }) => {
  const { spec, id, title, retired } = props;
  const end = spec.end ?? RETIRED;
  const text = retired ? `${title} is in use again.` : `${title} ${end.done}.`;
  return (
    <div class="form">
      <button
        type="button"
        class="button"
        onClick={() => void save(text, () => book.record(spec.kind, id, { retired: !retired }))}
      >
        {retired ? end.back : end.act}
      </button>
      <p class="small">
        {retired
          ? `It is not offered anywhere while it ${end.done}.`
          : "Then it is not offered any more. What it was used for stays on record."}
      </p>
    </div>
  );
};

interface Form {
  spec: RecordSpec;
  id: string | null;
  /** Where it leads once it is kept or left. */
  back: readonly string[];
  /** Another screen lacks something of this record: what is seldom asked for is open then. */
  asked?: boolean;
}

export const RecordForm = ({ spec, id, back, asked = false }: Form) => {
  const key = `${spec.kind}:${id ?? "new"}`;
  const before = id === null ? null : (docsOf(spec.kind).get(id) ?? null);
  const title = before === null ? newTitle(spec) : titleOf(spec.kind, before, known.value);
  useTitle(title);
  const [faults, setFaults] = useState<Faults>({});
  const typed = draftOf(key) ?? (id === null ? asNew(spec, docsOf) : asTyped(spec, before));

  const keep = async () => {
    const read = readForm(spec, typed, before, othersThan(spec, id));
    setFaults(read.faults);
    const [firstFault] = Object.keys(read.faults);
    if (firstFault !== undefined)
      return focusOn(spec.fields.findIndex((f) => f.name === firstFault));
    if (Object.keys(read.facts).length === 0) return leave();
    const name = titleOf(
      spec.kind,
      { fields: { ...before?.fields, ...read.facts }, set_by: {} },
      known.value,
    );
    const subject = id ?? newId();
    const what = spec.kind === "brewery" ? name : `${sentence(spec.one)} ${name}`;
    const text = `${what} ${before === null ? "entered" : "changed"}.`;
    if (await save(text, () => book.record(spec.kind, subject, read.facts))) leave();
  };
  const leave = () => {
    dropDraft(key);
    goOnTo(...back);
  };

  return (
    <>
      <NotMine kind={spec.kind} />
      {spec.kind === "lot" && before !== null && <LotLife doc={before} />}
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        {groupsOf(spec).map(({ group, fields }) => {
          const each = fields.map((field) => (
            <FieldFor
              key={field.name}
              spec={field}
              value={typed[field.name] ?? ""}
              fault={faults[field.name] ?? null}
              onValue={(value) => keepDraft(key, { ...typed, [field.name]: value })}
            />
          ));
          if (group === "") return each;
          return (
            <More key={group} label={group} open={asked && before !== null}>
              <div class="form">{each}</div>
            </More>
          );
        })}
        {may(spec.kind) && (
          <button type="submit" class="button main wide">
            {before === null ? `Enter this ${spec.one}` : "Keep the changes"}
          </button>
        )}
        <button type="button" class="button quiet" onClick={leave}>
          {draftOf(key) === undefined ? "Back" : "Leave without keeping"}
        </button>
      </form>
      {spec.kind === "customer" && id !== null && before !== null && may("erased") && (
        <Personal id={id} title={title} />
      )}
      {spec.kind === "beer" && id !== null && before !== null && <BeerTrials id={id} />}
      {spec.kind === "gyle" && before !== null && <Strength doc={before} />}
      {spec.kind === "gyle" && id !== null && <GyleLabel id={id} title={title} />}
      {id !== null && before !== null && spec.kind !== "brewery" && may(spec.kind) && (
        <Retire spec={spec} id={id} title={title} retired={before.fields.retired === true} />
      )}
    </>
  );
};

/** There is only one brewery. */
const newTitle = ({ kind, one, many }: RecordSpec): string =>
  kind === "brewery" ? many : `New ${one}`;

/** The fields as they stand in the form: those of a group together, in the order of the spec. */
const groupsOf = ({ fields }: RecordSpec) => {
  const groups = [...new Set(fields.map(({ group = "" }) => group))];
  return groups.map((group) => ({
    group,
    fields: fields.filter((field) => (field.group ?? "") === group),
  }));
};

/** The first field with a fault, so that a keyboard and ears arrive where something is to be done. */
const focusOn = (at: number): void => {
  const field = document.querySelectorAll(".form .field")[at];
  const behind = field?.closest("details");
  if (behind) behind.open = true;
  field?.querySelector<HTMLElement>("input, select")?.focus();
};
