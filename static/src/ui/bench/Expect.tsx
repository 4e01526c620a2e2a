// What is to be expected of a racking: its strength, the pressure of a closed cask, and the pressure
// to set for its kegs.

import { ownFigures } from "../own-figures.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { showWorking } from "../parts/working.ts";
import { listWords, sentence } from "../words.ts";
import { closedOf, closedWords } from "./closed.ts";
import type { Missing, Racked } from "./dose-line.ts";
import { doseLines } from "./doses.ts";
import {
  addedBy,
  expectedIn,
  expectedPct,
  expectedWords,
  labelledWords,
  workedOf,
} from "./expected.ts";
import { kegsOf } from "./KegCell.tsx";
import { sizeName } from "./sizes.ts";

const enterWords = ({ of, words }: Missing): string => `Enter the ${of}'s ${listWords(words)}.`;

const Strength = ({ racked }: { racked: Racked }) => {
  const lines = doseLines(racked);
  const added = addedBy(lines);
  const [first] = (lines[0] ?? racked).sizes;
  const volumeMl = first?.volume_ml ?? 1;
  if (added === null) return <Line title="Strength" reason="Known once the doses are." />;
  const expected = expectedIn(racked, added, volumeMl);
  if (expected.missing) {
    return <Line title="Strength" reason={enterWords(expected.missing)} tone="look" />;
  }
  const { says, look } = labelledWords(expected, racked.beer.abv_tenths);
  const reason = [expectedWords(expected), says].filter(Boolean).map(sentence).join(". ");
  return (
    <Line
      title="Strength"
      reason={`${reason}.`}
      {...(look ? { tone: "look" as const } : {})}
      figure={{ value: expectedPct(expected) ?? "", unit: "% vol" }}
      action={{
        label: "Why",
        onPress: () => showWorking("Strength to expect", ...workedOf(expected)),
      }}
    />
  );
};

const Closed = ({ racked }: { racked: Racked }) => {
  const closed = closedOf(doseLines(racked), {});
  if (closed === null) return null;
  const { says, look } = closedWords(closed, ownFigures.value);
  return (
    <Line
      title="Pressure"
      reason={says}
      {...(look ? { tone: "look" as const } : {})}
      action={{ label: "Why", onPress: () => showWorking("Pressure when closed", closed) }}
    />
  );
};

const Kegs = ({ racked }: { racked: Racked }) => {
  const kegs = kegsOf(racked);
  if (kegs === null) return null;
  const at = `${kegs.vol} volumes at ${kegs.tempC} °C, with a regulator and a relief valve fitted.`;
  if (kegs.missing) return <Line title="Kegs" reason={enterWords(kegs.missing)} tone="look" />;
  return (
    <>
      {kegs.kegs.map(({ size, bar, limitBar }, n) => (
        <Line
          key={size.volume_ml}
          title={`Carbonate ${sizeName(size.kind, size.volume_ml)}`}
          reason={bar === null ? `${at} That is more than its ${limitBar} bar.` : at}
          {...(bar === null ? { tone: "look" as const } : {})}
          {...(bar === null ? {} : { figure: { value: String(bar), unit: "bar" } })}
          action={{
            label: "Why",
            onPress: () => showWorking("Carbonating", ...kegs.worked.slice(n, n + 1)),
          }}
        />
      ))}
    </>
  );
};

export const Expect = ({ racked }: { racked: Racked }) => (
  <Lines heading="To expect">
    <Strength racked={racked} />
    <Closed racked={racked} />
    <Kegs racked={racked} />
  </Lines>
);
