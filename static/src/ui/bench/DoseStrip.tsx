// What goes into the container besides beer: one big number for each, or one for each size of a run.
// Behind a tap how it was worked out, and what is given instead.

import { showUnder } from "../parts/working.ts";
import { formAndBack } from "../shell/route.ts";
import { listWords, sentence } from "../words.ts";
import type { DoseLine, Missing } from "./dose-line.ts";
import { Given } from "./Given.tsx";
import { amountGiven } from "./instead.ts";
import { Remarks } from "./Remarks.tsx";
import { sizeName } from "./sizes.ts";
import { instead } from "./state.ts";

/** The rest of a long run is behind the tap. */
const SHOWN = 3;

/** What is given, and in words where that is not what is worked out. */
const amountOf = (line: DoseLine, n: number) => {
  const proposed = line.each?.[n] ?? null;
  const given = line.later ? proposed : amountGiven(instead.value, line, n);
  if (given === proposed) return { shown: given, says: "", off: false };
  return given === 0
    ? { shown: proposed, says: "not given", off: true }
    : { shown: given, says: proposed === null ? "as typed" : `not ${proposed}`, off: false };
};

const figureOf = ({ shown, off }: ReturnType<typeof amountOf>) =>
  off ? <s>{shown}</s> : (shown ?? "–");

const One = ({ line }: { line: DoseLine }) => {
  const amount = amountOf(line, 0);
  return (
    <>
      <b>
        {figureOf(amount)}
        {amount.shown !== null && <small>{line.unit}</small>}
      </b>
      <span class={amount.says ? "look" : "small"}>{amount.says || line.note}</span>
    </>
  );
};

/** One under the other, in line with the names of the sizes before them: what was worked out struck out. */
const EachSize = ({ line }: { line: DoseLine }) => (
  <>
    {line.sizes.slice(0, SHOWN).map(({ kind, volume_ml }, n) => {
      const { shown, says, off } = amountOf(line, n);
      return (
        <b key={`${kind} ${volume_ml}`}>
          {off ? 0 : (shown ?? "–")}
          {says ? (
            <small class="look">
              <s>{line.each?.[n]}</s>
            </small>
          ) : (
            <small>{line.unit}</small>
          )}
        </b>
      );
    })}
    <span class="small">{line.note}</span>
  </>
);

const Amounts = ({ line }: { line: DoseLine }) => (
  <>
    <span>{line.label}</span>
    {line.sizes.length > 1 ? <EachSize line={line} /> : <One line={line} />}
  </>
);

/** What the numbers beside it are for; each says it for itself to ears. */
const Names = ({ sizes }: { sizes: DoseLine["sizes"] }) => (
  <li class="dose" aria-hidden="true">
    <span>into each</span>
    {sizes.slice(0, SHOWN).map(({ kind, volume_ml }) => (
      <b key={`${kind} ${volume_ml}`}>
        <small>{sizeName(kind, volume_ml)}</small>
      </b>
    ))}
    {sizes.length > SHOWN && <span class="small">{sizes.length - SHOWN} more</span>}
  </li>
);

/** For ears: "426 mL", or "426 mL in a firkin, 852 mL in a kilderkin". */
const amountWords = (line: DoseLine): string =>
  line.sizes
    .map(({ kind, volume_ml }, n) => {
      const { shown, says } = amountOf(line, n);
      const amount = shown === null ? "not known" : `${shown} ${line.unit}`;
      const where = line.sizes.length > 1 ? ` in a ${sizeName(kind, volume_ml)}` : "";
      return `${amount}${where}${says ? `, ${says}` : ""}`;
    })
    .join(", ");

const Cell = ({ line }: { line: DoseLine }) => {
  // What is refused for good, isinglass in a vegan beer, is not given by another way either.
  if (line.each === null && line.missing === null) {
    return (
      <li class="dose">
        <Amounts line={line} />
      </li>
    );
  }
  const Decide = () => (
    <>
      {!line.later && <Given line={line} />}
      <Remarks line={line} />
    </>
  );
  const ask = line.each === null ? "how much is given" : "how it is worked out";
  return (
    <li>
      <button
        type="button"
        class="dose"
        aria-label={`${line.label} ${amountWords(line)}: ${ask}`}
        onClick={() => showUnder(Decide, sentence(line.label), ...line.worked)}
      >
        <Amounts line={line} />
      </button>
    </li>
  );
};

/** What is not entered, and where to enter it. */
export const Lacking = (props: { label: string; missing: Missing; gyle: string; beer: string }) => {
  const { label, missing } = props;
  const ofGyle = missing.of === "gyle";
  const href = ofGyle ? formAndBack("gyles", props.gyle) : formAndBack("beers", props.beer);
  return (
    <p>
      <a
        class="look"
        href={href}
        aria-label={`For ${label} enter the ${missing.of}'s ${listWords(missing.words)}`}
      >
        Enter {listWords(missing.words)}
      </a>
    </p>
  );
};

export const DoseCells = ({ lines }: { lines: readonly DoseLine[] }) => (
  <>
    {lines[0] && lines[0].sizes.length > 1 && <Names sizes={lines[0].sizes} />}
    {lines.map((line) => (
      <Cell key={line.what} line={line} />
    ))}
  </>
);
