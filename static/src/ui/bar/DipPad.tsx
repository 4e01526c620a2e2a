// A dip: how much is left, typed on the pad in litres or pints, or how far the rod was wet, or its weight.

import { book } from "../../store/book.ts";
import { deed } from "../cellar/deed.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Button } from "../parts/Button.tsx";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { Pad } from "../parts/pad/Pad.tsx";
import { say } from "../parts/say.ts";
import { showWorking } from "../parts/working.ts";
import { containerName, litres } from "../words.ts";
import { type Dip, readDip, type Unit, unitAfter, unitsFor } from "./dip.ts";
import { wholePints } from "./pints.ts";
import { dipping, dipUnit } from "./state.ts";

const stop = () => {
  dipping.value = null;
};

const record = async (number: string, { left_ml, measured }: Dip): Promise<void> => {
  if (left_ml === null) return;
  const words = `${number} dipped: ${litres(left_ml)}, ${wholePints(left_ml)} pints left.`;
  if (await deed(number, words, "dipped", { left_ml, ...measured?.facts })) stop();
};

const UNIT_WORDS: { readonly [unit in Unit]: { key: string; what: string } } = {
  litres: { key: "Litres", what: "litres left" },
  pints: { key: "Pints", what: "pints left" },
  mm: { key: "Wet mm", what: "mm wet" },
  cm: { key: "Wet cm", what: "cm wet" },
  upright: { key: "Upright", what: "mm wet, standing on its head" },
  kg: { key: "Weight", what: "kg with the beer" },
};

const HowMeasured = ({ number, dip }: { number: string; dip: Dip }) =>
  dip.measured === null ? null : (
    <>
      <p class="small">{dip.measured.by}</p>
      <Button
        onPress={() =>
          dip.measured !== null && showWorking(`Left in ${number}`, dip.measured.worked)
        }
      >
        How it is worked out
      </Button>
    </>
  );

export const DipPad = (props: { number: string; typed: string }) => {
  const { number, typed } = props;
  const standing = book.containers.value.get(number);
  if (standing?.contents == null) return null;
  const units = unitsFor(standing);
  const unit = units.includes(dipUnit.value) ? dipUnit.value : "litres";
  const other = unitAfter(unit, units);
  const dip = readDip(typed, unit, standing, known.value, ownFigures.value);
  const onPress = () =>
    dip.left_ml === null || dip.cannot !== null
      ? say.trouble(dip.cannot ?? "")
      : void record(number, dip);
  return (
    <section class="hand" aria-label={`Dip ${number}`}>
      <div class="now">
        <Head look={headOf(standing, known.value.now)} size="large" />
        <div>
          <p>
            <strong>{containerName(standing)}</strong>
          </p>
          <p class="amount">
            <output aria-live="polite">{typed === "" ? "–" : typed}</output> {UNIT_WORDS[unit].what}
          </p>
          <p class="small">
            {dip.same === ""
              ? `${litres(standing.contents.left_ml)} on record`
              : `that is ${dip.same}`}
          </p>
          {typed !== "" && (dip.cannot ?? dip.odd) && (
            <p class="look" role="alert">
              {dip.cannot ?? dip.odd}
            </p>
          )}
          <div class="buttons">
            <HowMeasured number={number} dip={dip} />
            <Button onPress={stop}>Leave it</Button>
          </div>
        </div>
      </div>
      <Pad
        types="litres"
        typed={typed}
        onTyped={(text) => {
          dipping.value = { number, typed: text };
        }}
        go={{ does: "Dip", to: number, cannot: dip.cannot, onPress }}
        side={{
          label: UNIT_WORDS[other].key,
          hint: "instead",
          onPress: () => {
            dipUnit.value = other;
          },
        }}
      />
    </section>
  );
};
