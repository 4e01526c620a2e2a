// The temperature of each place: noted by hand, taken from a logger's file, or what is usual.

import { useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Field } from "../parts/Field.tsx";
import { More } from "../parts/More.tsx";
import { save } from "../parts/say.ts";
import { hrefTo } from "../shell/route.ts";
import { degrees } from "../words.ts";
import { LogFile } from "./LogFile.tsx";
import { type PlaceTemp, tempsOf, tempWords, typedDecidegc } from "./temperatures.ts";

/** One figure and the button that keeps it. */
const Degrees = (props: {
  label: string;
  does: string;
  hint?: string;
  keep: (decidegc: number) => Promise<boolean>;
}) => {
  const [text, setText] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const keep = async (event: Event) => {
    event.preventDefault();
    const decidegc = typedDecidegc(text);
    setFault(decidegc === null ? "Degrees, as 11.8." : null);
    if (decidegc !== null && (await props.keep(decidegc))) setText("");
  };
  return (
    <form class="one-figure" onSubmit={(event) => void keep(event)} noValidate>
      <Field
        label={props.label}
        type="decimal"
        value={text}
        onValue={setText}
        fault={fault}
        {...(props.hint === undefined ? {} : { hint: props.hint })}
      />
      <button type="submit" class="button">
        {props.does}
      </button>
    </form>
  );
};

const OnePlace = ({ place }: { place: PlaceTemp }) => {
  const { id, name, usualDecidegc } = place;
  const note = (decidegc: number) =>
    save(`${name}: ${degrees(decidegc)}.`, () =>
      book.record("temperature", id, { series: [[book.now(), decidegc]] }),
    );
  const setUsual = (decidegc: number) =>
    save(`${name} is usually ${degrees(decidegc)}.`, () =>
      book.record("place", id, { temp_decidegc: decidegc }),
    );
  return (
    <section class="form" aria-label={name}>
      <h2>{tempWords(place, known.value.now)}</h2>
      <Degrees label="The thermometer shows, °C" does="Note it" keep={note} />
      <More label="Logger's file, usual temperature">
        <LogFile place={place} />
        <Degrees
          label="Usual temperature, °C"
          does="Set it"
          hint={
            usualDecidegc === null
              ? "Stands for the hours with no reading. Not set yet."
              : `Stands for the hours with no reading. Now ${degrees(usualDecidegc)}.`
          }
          keep={setUsual}
        />
      </More>
    </section>
  );
};

export const Temperatures = () => {
  // In the order of names here, so that a form stays where it was when its reading is noted.
  const places = tempsOf(book.places.value).sort((a, b) => (a.name < b.name ? -1 : 1));
  return (
    <>
      {places.length === 0 && <p class="none">No place for beer is entered yet.</p>}
      {places.map((place) => (
        <OnePlace key={place.id} place={place} />
      ))}
      <div class="buttons form">
        {places.length === 0 && (
          <a class="button" href={hrefTo("office", "places")}>
            Enter places
          </a>
        )}
        <a class="button" href={hrefTo("cellar")}>
          Back to the Cellar
        </a>
      </div>
    </>
  );
};
