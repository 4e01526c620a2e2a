// A number that is not on record: say what it is and go on. Its capacity comes from its kind.

import { CONTAINER_KINDS } from "../../domain/containers.ts";
import { Field, Select } from "../parts/Field.tsx";
import { litres } from "../words.ts";
import { newFacts } from "./jobs.ts";
import { newCapacity, newKind } from "./state.ts";

const OPTIONS = Object.entries(CONTAINER_KINDS).map(([value, kind]) => ({
  value,
  label: kind.capacity_ml === null ? `Another ${kind.name.toLowerCase()}` : kind.name,
}));

const NewContainer = () => {
  const capacity = newFacts().capacity_ml;
  const nominal = CONTAINER_KINDS[newKind.value]?.capacity_ml ?? null;
  return (
    <div class="new">
      <Select
        label="Kind"
        value={newKind.value}
        onValue={(kind) => {
          newKind.value = kind;
          newCapacity.value = null;
        }}
        options={OPTIONS}
      />
      <Field
        label="Holds, litres"
        type="decimal"
        value={newCapacity.value ?? (nominal === null ? "" : litres(nominal).replace(/\s.*/, ""))}
        onValue={(text) => {
          newCapacity.value = text;
        }}
        fault={capacity === null && newCapacity.value ? "Litres, as 40.9" : null}
      />
    </div>
  );
};

export default NewContainer;
