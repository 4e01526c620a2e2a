// The pressure to set for a keg, where the others have their doses; behind a tap the temperature of
// the beer, which decides it.

import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { CAUTIONS } from "../../domain/cautions.ts";
import { setting } from "../../domain/figures.ts";
import { RANGES } from "../../domain/inputs.ts";
import { ownFigures } from "../own-figures.ts";
import { Field } from "../parts/Field.tsx";
import { showUnder } from "../parts/working.ts";
import { sentence } from "../words.ts";
import { type Carbonating, carbonating } from "./carbonating.ts";
import type { Racked } from "./dose-line.ts";
import { sizeName } from "./sizes.ts";

/** As measured at the bench; the brewery's usual one until then. */
const measured = signal<number | null>(null);

export const kegsOf = (racked: Racked): Carbonating | null =>
  carbonating(racked, measured.value ?? setting("keg_carbonation_temp_c", ownFigures.value));

type Keg = Carbonating["kegs"][number];

const barWords = ({ bar, limitBar }: Keg): string =>
  bar === null ? `none: over its ${limitBar} bar` : `${bar} bar`;

const { low, high } = RANGES.keg_temp_c;

const Warmth = ({ racked }: { racked: Racked }) => {
  const [text, setText] = useState(() => String(kegsOf(racked)?.tempC ?? ""));
  const [fault, setFault] = useState("");
  const kegs = kegsOf(racked);
  const take = (typed: string) => {
    setText(typed);
    const temp = /^\d{1,2}([.,]\d)?$/.test(typed.trim()) ? Number(typed.replace(",", ".")) : -1;
    const fits = temp >= low && temp <= high;
    setFault(fits ? "" : `Degrees from ${low} to ${high}, as 4.5.`);
    if (fits) measured.value = temp;
  };
  return (
    <div class="form">
      <Field
        label="Temperature of the beer, °C"
        hint="All the way through, after some hours at rest."
        type="decimal"
        value={text}
        fault={fault || null}
        onValue={take}
      />
      <p aria-live="polite">
        {kegs?.kegs.map((keg) => (
          <strong key={keg.size.volume_ml}>
            {sentence(sizeName(keg.size.kind, keg.size.volume_ml))}: {barWords(keg)}.{" "}
          </strong>
        ))}
        For {kegs?.vol} volumes of CO2.
      </p>
      <p class="look">{CAUTIONS.regulator_and_relief.words}</p>
    </div>
  );
};

export const KegCell = ({ racked, kegs }: { racked: Racked; kegs: Carbonating }) => {
  const several = racked.sizes.length > 1;
  const words = kegs.kegs.map(barWords).join(", ");
  return (
    <li>
      <button
        type="button"
        class="dose"
        aria-label={`Pressure ${words || "not known"}: how it is worked out`}
        onClick={() => showUnder(() => <Warmth racked={racked} />, "Carbonating", ...kegs.worked)}
      >
        <span>pressure</span>
        {kegs.kegs.map((keg) => (
          <>
            <b>
              {keg.bar ?? "–"}
              {keg.bar !== null && <small>bar</small>}
            </b>
            {several && <span class="small">{sizeName(keg.size.kind, keg.size.volume_ml)}</span>}
            {keg.bar === null && <span class="look">over its {keg.limitBar} bar</span>}
          </>
        ))}
        {kegs.kegs.length === 0 && <b>–</b>}
        <span class="small">
          {kegs.vol} vol at {kegs.tempC} °C
        </span>
      </button>
    </li>
  );
};
