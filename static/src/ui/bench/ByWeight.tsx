// Litres from the scale: the container's own tare, the gyle's gravity, the beer's temperature.

import { useState } from "preact/hooks";
import { CAUTIONS } from "../../domain/cautions.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Empty } from "../parts/Empty.tsx";
import { Field } from "../parts/Field.tsx";
import { say } from "../parts/say.ts";
import { showWorking } from "../parts/working.ts";
import { goOnTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { litres } from "../words.ts";
import { readWeighed, toleranceWords, type Weighed } from "./by-weight.ts";
import { capacityOf } from "./jobs.ts";
import { gyleId, meant, typingLitres, volumeMl } from "./state.ts";

const LIFTING = ["lifting_near_filter", "lifting_beyond_filter"] as const;

const inKg = (grams: number | null | undefined): string =>
  grams == null ? "" : String(grams / 1000);

const Form = ({ number, capacityMl }: { number: string; capacityMl: number }) => {
  const gyle = known.value.gyles.get(gyleId.value)?.fields;
  const standing = meant.value.is === "one" ? meant.value.standing : null;
  const [typed, setTyped] = useState<Weighed>({
    grossKg: "",
    tareKg: inKg(standing?.tare_g),
    gravity: gyle?.present_gravity_e4 === undefined ? "" : String(gyle.present_gravity_e4 / 10_000),
    tempC: "",
  });
  const { worked, fault } = readWeighed(typed, capacityMl, ownFigures.value);
  const field = (name: keyof Weighed, label: string) => (
    <Field
      label={label}
      type="decimal"
      value={typed[name]}
      onValue={(text) => setTyped({ ...typed, [name]: text })}
    />
  );
  const use = () => {
    if (worked === null) return say.trouble(fault ?? "");
    volumeMl.value = worked.result.volume_ml;
    typingLitres.value = null;
    goOnTo("bench");
  };
  const lifting = LIFTING.filter((id) => worked?.cautions.includes(id));
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        use();
      }}
    >
      {field("grossKg", `Weight of ${number} with beer, kg`)}
      {field("tareKg", "Weight empty, kg")}
      {field("gravity", "Gravity now")}
      {field("tempC", "Temperature of the beer, °C")}
      <div aria-live="polite">
        {worked === null ? (
          <p>{typed.grossKg === "" ? "Type what the scale says." : fault}</p>
        ) : (
          <>
            <p>
              <strong>{litres(worked.result.volume_ml)}</strong>, {toleranceWords(worked.result)}
            </p>
            {lifting.map((id) => (
              <p key={id} class="look">
                {CAUTIONS[id].words}
              </p>
            ))}
          </>
        )}
      </div>
      {worked !== null && (
        <button
          type="button"
          class="button"
          onClick={() => showWorking(`Litres in ${number} by weight`, worked)}
        >
          How it is worked out
        </button>
      )}
      <button type="submit" class="button main wide">
        Use these litres
      </button>
    </form>
  );
};

const ByWeight = () => {
  useTitle("By weight");
  const what = meant.value;
  const capacityMl = what.is === "one" ? capacityOf(what.standing) : null;
  if (what.is !== "one" || capacityMl === null) {
    return <Empty says="Type the number of one container on the pad first." />;
  }
  return <Form number={what.number} capacityMl={capacityMl} />;
};

export default ByWeight;
