// Entering containers, a whole run at once.

import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { CONTAINER_KINDS } from "../../../domain/containers.ts";
import { book } from "../../../store/book.ts";
import { placesFor } from "../../cellar/places.ts";
import { Field, Select } from "../../parts/Field.tsx";
import { More } from "../../parts/More.tsx";
import { save } from "../../parts/say.ts";
import { setHalfMade } from "../../shell/half-made.ts";
import { useTitle } from "../../shell/title.ts";
import { kindName, listWords, litres } from "../../words.ts";
import {
  isKeg,
  readRegistration,
  registrationWords,
  type TypedRegistration,
} from "./registering.ts";

const NOTHING: TypedRegistration = {
  numbers: "",
  kind: "firkin",
  litres: "",
  tare: "",
  limit: "",
  owner: "",
  hirePounds: "",
  hireDueOn: "",
  place: "",
};

/** Kept outside the form: a look at another screen loses nothing. */
const typedNow = signal<TypedRegistration>(NOTHING);

/** A keg's name says its litres already. */
const labelOf = (name: string, capacity: number | null): string => {
  if (capacity === null) return `Another ${name.toLowerCase()}`;
  return /^\d/.test(name) ? name : `${name}, ${litres(capacity)}`;
};

const KINDS = Object.entries(CONTAINER_KINDS).map(([value, { name, capacity_ml }]) => ({
  value,
  label: labelOf(name, capacity_ml),
}));

export const NewContainers = () => {
  useTitle("New containers");
  const [tried, setTried] = useState(false);
  const typed = typedNow.value;
  const read = readRegistration(typed, book.containers.value);
  const put = (change: Partial<TypedRegistration>) => {
    typedNow.value = { ...typed, ...change };
    setHalfMade("containers form", typedNow.value.numbers !== "");
  };
  const faults = tried ? read.faults : {};
  const words = registrationWords(kindName(typed.kind), read.numbers);
  const keep = async () => {
    setTried(true);
    if (Object.keys(read.faults).length > 0) return;
    const drafts = read.numbers.map((subject) => {
      return { kind: "registered" as const, subject, facts: read.facts };
    });
    if (!(await save(`Entered ${words}.`, () => book.recordMany(drafts)))) return;
    setTried(false);
    put({ numbers: "" });
  };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <Field
        label="Numbers"
        hint="A run or several: 117-124, 130, K3."
        value={typed.numbers}
        onValue={(numbers) => put({ numbers })}
        fault={faults.numbers ?? null}
        capitals
      />
      <Select
        label="Kind"
        value={typed.kind}
        onValue={(kind) => put({ kind, litres: "", limit: "" })}
        options={KINDS}
      />
      {read.known.length > 0 && (
        <p class="look">On record already, left as they are: {listWords(read.known)}.</p>
      )}
      <More
        label={
          isKeg(typed.kind) ? "Size, pressure, weight, owner, place" : "Size, weight, owner, place"
        }
        open={CONTAINER_KINDS[typed.kind]?.capacity_ml == null}
      >
        <div class="form">
          <Field
            label="Litres one holds"
            hint="Left empty, the usual size of its kind."
            type="decimal"
            value={typed.litres}
            onValue={(value) => put({ litres: value })}
            fault={faults.litres ?? null}
          />
          <Field
            label="Weight when empty, kg"
            type="decimal"
            value={typed.tare}
            onValue={(tare) => put({ tare })}
            fault={faults.tare ?? null}
          />
          {isKeg(typed.kind) && (
            <Field
              label="Working pressure as marked, bar"
              hint="Stamped on them. No dose and no carbonation is to pass it."
              type="decimal"
              value={typed.limit}
              onValue={(limit) => put({ limit })}
              fault={faults.limit ?? null}
            />
          )}
          <Field
            label="Owner, if not ourselves"
            value={typed.owner}
            onValue={(owner) => put({ owner })}
            maxLength={60}
          />
          <Field
            label="If hired, £ a day"
            type="decimal"
            value={typed.hirePounds}
            onValue={(hirePounds) => put({ hirePounds })}
            fault={faults.hire ?? null}
          />
          <Field
            label="If hired, due back on"
            type="date"
            value={typed.hireDueOn}
            onValue={(hireDueOn) => put({ hireDueOn })}
          />
          <Select
            label="Where they are"
            value={typed.place}
            onValue={(place) => put({ place })}
            none="In the brewery"
            options={placesFor(book.places.value).map(({ id, name }) => ({
              value: id,
              label: name,
            }))}
          />
        </div>
      </More>
      <button type="submit" class="button main wide">
        {read.numbers.length === 0 ? "Enter them" : `Enter ${words}`}
      </button>
    </form>
  );
};
