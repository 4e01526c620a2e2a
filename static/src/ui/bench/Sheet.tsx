// The sheet for the bench: the doses of each kind that is to be filled, what to draw in all, and how
// to make the syrup up.

import { CAUTIONS } from "../../domain/cautions.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { showUnder } from "../parts/working.ts";
import { listWords, sentence } from "../words.ts";
import type { DoseLine, Racked } from "./dose-line.ts";
import { doseLines } from "./doses.ts";
import { Remarks } from "./Remarks.tsx";
import { sizeName } from "./sizes.ts";
import { syrupWords } from "./syrup-words.ts";

const doseOf = (line: DoseLine, n: number): string =>
  line.each === null ? `${line.label} not known` : `${line.label} ${line.each[n]} ${line.unit}`;

const Total = ({ line, beer }: { line: DoseLine; beer: Racked["beer"] }) => {
  const says = line.missing
    ? `Enter the ${line.missing.of}'s ${listWords(line.missing.words)} first.`
    : `${sentence(line.note)}${line.note === "" ? "" : "."} ${syrupWords(line, beer)}`.trim();
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
              onPress: () =>
                showUnder(() => <Remarks line={line} />, sentence(line.label), ...line.worked),
            },
          })}
    />
  );
};

export const Sheet = ({ racked }: { racked: Racked }) => {
  const lines = doseLines(racked);
  const [first] = lines;
  if (first === undefined) return null;
  return (
    <>
      <Lines heading="Into each">
        {first.sizes.map(({ kind, volume_ml }, n) => (
          <Line
            key={`${kind} ${volume_ml}`}
            title={sentence(sizeName(kind, volume_ml))}
            reason={`${lines.map((line) => doseOf(line, n)).join(", ")}.`}
          />
        ))}
      </Lines>
      <Lines heading="To draw in all">
        {lines.map((line) => (
          <Total key={line.what} line={line} beer={racked.beer} />
        ))}
      </Lines>
      {lines.some(({ worked }) =>
        worked.some(({ cautions }) => cautions.includes("two_vessels")),
      ) && <p class="form small">{CAUTIONS.two_vessels.words}</p>}
    </>
  );
};
