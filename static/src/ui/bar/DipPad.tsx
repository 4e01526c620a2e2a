// A dip: how much is left, typed on the pad in litres or pints.

import { book } from "../../store/book.ts";
import { deed } from "../cellar/deed.ts";
import { known } from "../known.ts";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import { Pad } from "../parts/Pad.tsx";
import { say } from "../parts/say.ts";
import { containerName, litres } from "../words.ts";
import { readDip } from "./dip.ts";
import { wholePints } from "./pints.ts";
import { dipping, dipUnit } from "./state.ts";

const stop = () => {
  dipping.value = null;
};

const record = async (number: string, left_ml: number): Promise<void> => {
  const words = `${number} dipped: ${litres(left_ml)}, ${wholePints(left_ml)} pints left.`;
  if (await deed(number, words, "dipped", { left_ml })) stop();
};

export const DipPad = (props: { number: string; typed: string }) => {
  const { number, typed } = props;
  const standing = book.containers.value.get(number);
  if (standing?.contents == null) return null;
  const unit = dipUnit.value;
  const other = unit === "litres" ? "pints" : "litres";
  const dip = readDip(typed, unit, standing, known.value);
  const onPress = () =>
    dip.left_ml === null || dip.cannot !== null
      ? say.trouble(dip.cannot ?? "")
      : void record(number, dip.left_ml);
  return (
    <section class="hand" aria-label={`Dip ${number}`}>
      <div class="now">
        <Head look={headOf(standing, known.value.now)} size="large" />
        <div>
          <p>
            <strong>{containerName(standing)}</strong>
          </p>
          <p class="amount">
            <output aria-live="polite">{typed === "" ? "–" : typed}</output> {unit} left
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
          <button type="button" class="button" onClick={stop}>
            Leave it
          </button>
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
          label: other === "pints" ? "Pints" : "Litres",
          hint: "instead",
          onPress: () => {
            dipUnit.value = other;
          },
        }}
      />
    </section>
  );
};
