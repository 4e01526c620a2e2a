// The doses for what is meant: of one container, of every size in a run, or of one that is fined.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { count } from "../words.ts";
import { cautionLine } from "./closed.ts";
import { DoseCells, Lacking } from "./DoseStrip.tsx";
import { doseLines } from "./doses.ts";
import { toFill } from "./jobs.ts";
import { KegCell, kegsOf } from "./KegCell.tsx";
import { LotsLine } from "./LotsLine.tsx";
import { usedLots } from "./lots-used.ts";
import { finingLine, rackedFor } from "./noted.ts";
import { gyleId, instead, job, meant } from "./state.ts";

/** Before a number stands there, a container of the kind that was last entered. */
const meantNow = () => {
  const what = meant.value;
  if (what.is === "one") return [what.standing];
  if (what.is !== "run") return [null];
  return what.numbers.map((number) => book.containers.value.get(number) ?? null);
};

const using = () => ({ lots: usedLots.value, trials: book.trials.value });

const Caution = ({ says, look }: { says: string; look: boolean }) =>
  says === "" ? null : <p class={look ? "look" : "small"}>{says}</p>;

const Fining = () => {
  const [standing = null] = meantNow();
  const line = standing && finingLine(known.value, standing, ownFigures.value, using());
  if (line === null) return null;
  const gyle = standing?.contents?.gyle ?? "";
  const beer = known.value.gyles.get(gyle)?.fields.beer ?? "";
  const caution = cautionLine([line], instead.value);
  return (
    <section class="doses" aria-label="Finings">
      <ul>
        <DoseCells lines={[line]} />
      </ul>
      {line.missing && (
        <Lacking label={line.label} missing={line.missing} gyle={gyle} beer={beer} />
      )}
      <Caution {...caution} />
      <LotsLine lines={[line]} />
    </section>
  );
};

const Filling = () => {
  const gyle = gyleId.value;
  const all = meantNow().map(toFill);
  const racked = rackedFor(known.value, gyle, all, ownFigures.value, using());
  if (racked === null) return null;
  const lines = doseLines(racked);
  const kegs = kegsOf(racked);
  if (lines.length === 0 && kegs === null) return null;
  const beer = known.value.gyles.get(gyle)?.fields.beer ?? "";
  // What lacks comes before what is odd: one line under the strip, but for danger.
  const lacking = [...lines, ...(kegs ? [{ ...kegs, label: "carbonation" }] : [])].flatMap(
    ({ label, missing }) => (missing === null ? [] : [{ label, missing }]),
  )[0];
  const caution = cautionLine(lines, instead.value, kegs?.worked);
  return (
    <section class="doses" aria-label={`Doses for ${count(racked.sizes.length, "size")}`}>
      <ul>
        <DoseCells lines={lines} />
        {kegs && <KegCell racked={racked} kegs={kegs} />}
      </ul>
      {lacking && <Lacking {...lacking} gyle={gyle} beer={beer} />}
      {(!lacking || caution.look) && <Caution {...caution} />}
      <LotsLine lines={lines} />
    </section>
  );
};

export const DosesNow = () => (job.value === "fine" ? <Fining /> : <Filling />);
