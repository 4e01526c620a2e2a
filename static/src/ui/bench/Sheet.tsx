// The sheet for the bench: the doses of each kind that is to be filled, what to draw in all, and how
// to make the syrup up.

import type { BeerFields, GyleFields } from "../../domain/records.ts";
import { ownFigures } from "../own-figures.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { showWorking } from "../parts/working.ts";
import { listWords, sentence } from "../words.ts";
import { type DoseLine, doseLines } from "./doses.ts";
import { type Row, rowName } from "./racking-plan.ts";
import { syrupWords } from "./syrup-words.ts";

interface Fill {
  row: Row;
  fill: number;
}

const doseOf = (line: DoseLine, n: number): string =>
  line.each === null ? `${line.label} not known` : `${line.label} ${line.each[n]} ${line.unit}`;

const Total = ({ line }: { line: DoseLine }) => {
  const says = line.missing
    ? `Enter the ${line.missing.of}'s ${listWords(line.missing.words)} first.`
    : `${sentence(line.note)}${line.note === "" ? "" : "."} ${syrupWords(line)}`.trim();
  return (
    <Line
      title={sentence(line.label)}
      reason={says}
      {...(line.missing ? { tone: "look" as const } : {})}
      {...(line.total === null ? {} : { figure: { value: String(line.total), unit: line.unit } })}
      {...(line.worked.length === 0
        ? {}
        : {
            action: {
              label: "Why",
              onPress: () => showWorking(sentence(line.label), ...line.worked),
            },
          })}
    />
  );
};

export const Sheet = (props: {
  beer: Partial<BeerFields>;
  gyle: Partial<GyleFields>;
  fills: readonly Fill[];
}) => {
  const { beer, gyle, fills } = props;
  if (fills.length === 0) return null;
  const containers = fills.map(({ row, fill }) => ({ volume_ml: row.capacity_ml, count: fill }));
  const lines = doseLines({ beer, gyle, containers, settings: ownFigures.value });
  if (lines.length === 0) return null;
  return (
    <>
      <Lines heading="Into each">
        {fills.map(({ row }, n) => (
          <Line
            key={row.key}
            title={sentence(rowName(row))}
            reason={`${lines.map((line) => doseOf(line, n)).join(", ")}.`}
          />
        ))}
      </Lines>
      <Lines heading="To draw in all">
        {lines.map((line) => (
          <Total key={line.what} line={line} />
        ))}
      </Lines>
    </>
  );
};
