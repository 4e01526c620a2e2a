// A new trial: which gyle, how large the jars, which steps of each finings.

import { signal } from "@preact/signals";
import type { Dose } from "../../../domain/standing.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { newId } from "../../office/new-id.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Choice } from "../../parts/Choice.tsx";
import { Field, Select } from "../../parts/Field.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { save } from "../../parts/say.ts";
import { showWorking } from "../../parts/working.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { addedWords } from "../../words/entries.ts";
import { gyleName, sentence } from "../../words.ts";
import { openGyles } from "../gyles.ts";
import { type ChosenLots, liveLots, lotName, NO_LOT } from "../lots.ts";
import { usedLots } from "../lots-used.ts";
import { gyleId } from "../state.ts";
import { chosenFor, lotFacts, triedIn } from "./lots-tried.ts";
import { jarsWords, readSetUp, type Typed, tooSmall, usualSetUp } from "./set-up.ts";

/** Outlive a look at another screen. */
const typed = signal<Typed | null>(null);
const chosenGyle = signal("");
const kind = signal<"auxiliary_alginate" | "auxiliary_silica" | "">("");

const chosen = signal<ChosenLots>({});

const KINDS = [
  { value: "auxiliary_alginate", label: "Alginate" },
  { value: "auxiliary_silica", label: "Silica" },
];

const gylesOf = (beer: string): string[] =>
  openGyles(book.gyles.value)
    .filter(([, { fields }]) => fields.beer === beer)
    .map(([id]) => id);

/** Which lot goes into the jars, so that it is known what the rate holds for. */
const LotOf = (props: {
  what: Dose["what"];
  lot: string | undefined;
  onLot: (id: string) => void;
}) => {
  const live = liveLots(book.lots.value, props.what);
  if (live.length === 0) return null;
  return (
    <Choice
      label={`Lot of ${addedWords(props.what)}`}
      options={[
        ...live.map(([value, lot]) => ({ value, label: lotName(lot) })),
        { value: NO_LOT, label: "Not noted" },
      ]}
      value={props.lot ?? NO_LOT}
      onValue={props.onLot}
    />
  );
};

export const SetUp = ({ beer }: { beer: string }) => {
  useTitle("Set a trial up");
  const fields = book.beers.value.get(beer)?.fields ?? {};
  const now = typed.value ?? usualSetUp(ownFigures.value);
  const gyles = gylesOf(beer);
  const gyle = [chosenGyle.value, gyleId.value].find((id) => gyles.includes(id)) ?? gyles[0];
  const { worked, samples, sampleMl, fault } = readSetUp(
    now,
    fields.vegan ?? false,
    ownFigures.value,
  );
  const withAuxiliary = samples.some(({ auxiliary_centipt }) => auxiliary_centipt > 0);
  const usual = fields.auxiliary === "none" ? "" : (fields.auxiliary ?? "");
  const auxiliary = kind.value || usual;
  const cannot =
    fault ??
    (gyle === undefined ? "There is no gyle of this beer to take the jars from." : null) ??
    (withAuxiliary && auxiliary === "" ? "Which auxiliary is it: alginate or silica?" : null);
  const tried = triedIn(samples, withAuxiliary ? (auxiliary as Dose["what"] | "") : "");
  const lots = chosenFor(tried, book.lots.value, chosen.value, usedLots.value);
  const set = (name: keyof Typed) => (text: string) => {
    typed.value = { ...now, [name]: text };
  };
  const keep = async () => {
    const id = newId();
    const facts = {
      gyle,
      sample_ml: sampleMl,
      samples,
      ...(withAuxiliary ? { auxiliary } : {}),
      ...lotFacts(tried, lots),
    };
    if (!(await save("The trial is set up.", () => book.record("trial", id, facts)))) return;
    typed.value = null;
    chosen.value = {};
    goOnTo("bench", "trials", beer, id);
  };
  return (
    <div class="form">
      <NotMine kind="trial" />
      <Select
        label="Beer from"
        value={gyle ?? ""}
        onValue={(id) => {
          chosenGyle.value = id;
        }}
        options={gyles.map((value) => ({ value, label: sentence(gyleName(known.value, value)) }))}
        {...(gyles.length === 0 ? { none: "No gyle of it is on record" } : {})}
      />
      <Field
        label="Beer in each jar, mL"
        type="whole"
        value={now.sampleMl}
        onValue={set("sampleMl")}
      />
      <Field
        label="Isinglass, pints a barrel"
        hint="The steps of the ladder, with spaces between. 0 leaves it out."
        value={now.isinglass}
        onValue={set("isinglass")}
      />
      <Field label="Auxiliary, pints a barrel" value={now.auxiliary} onValue={set("auxiliary")} />
      {withAuxiliary && (
        <Choice
          label="The auxiliary is"
          options={KINDS}
          value={auxiliary}
          onValue={(value) => {
            kind.value = value as typeof kind.value;
          }}
        />
      )}
      {tried.map((what) => (
        <LotOf
          key={what}
          what={what}
          lot={lots[what]}
          onLot={(id) => {
            chosen.value = { ...chosen.peek(), [what]: id };
          }}
        />
      ))}
      <div aria-live="polite">
        {fault === null ? <p>{jarsWords(samples, sampleMl)}</p> : <p class="look">{fault}</p>}
        {worked !== null && <p class="small">{tooSmall(worked)}</p>}
      </div>
      {worked !== null && (
        <Button onPress={() => showWorking("Doses of the jars", worked)}>
          How it is worked out
        </Button>
      )}
      <Button look="main" wide cannot={cannot} onPress={() => void keep()}>
        Set it up
      </Button>
    </div>
  );
};
