// What goes into the container besides beer: one big number for each; behind a tap how it was worked
// out, and a switch for a dose that is not given.

import { showWithSwitch } from "../parts/working.ts";
import { hrefTo } from "../shell/route.ts";
import { listWords, litres, sentence } from "../words.ts";
import type { DoseLine } from "./doses.ts";
import { cautionLine, isGiven } from "./dosing.ts";
import { LotsLine } from "./LotsLine.tsx";
import { given } from "./state.ts";

const turn = (what: string, on: boolean): void => {
  given.value = { ...given.peek(), [what]: on };
};

const Amount = ({ line }: { line: DoseLine }) => {
  const off = !line.later && !isGiven(given.value, line);
  return (
    <>
      <span>{line.label}</span>
      <b class={off ? "off" : ""}>
        {line.each?.[0] ?? "–"}
        {line.each !== null && <small>{line.unit}</small>}
      </b>
      <span class={off ? "look" : "small"}>{off ? "not given" : line.note}</span>
    </>
  );
};

const Cell = ({ line, volumeMl }: { line: DoseLine; volumeMl: number }) => {
  const amount = line.each?.[0] ?? 0;
  const decide = {
    label: `Given with the fill: ${line.label}`,
    on: () => isGiven(given.value, line),
    turn: (on: boolean) => turn(line.what, on),
  };
  if (line.worked.length === 0) {
    return (
      <li class="dose">
        <Amount line={line} />
      </li>
    );
  }
  const title = `${sentence(line.label)} for ${litres(volumeMl)}`;
  const open = () =>
    showWithSwitch(line.later || amount === 0 ? null : decide, title, ...line.worked);
  return (
    <li>
      <button
        type="button"
        class="dose"
        aria-label={`${line.label} ${amount} ${line.unit}: how it is worked out`}
        onClick={open}
      >
        <Amount line={line} />
      </button>
    </li>
  );
};

/** What is not entered, and where to enter it. */
const Missing = (props: { line: DoseLine; gyle: string; beer: string }) => {
  const { line } = props;
  if (line.missing === null) return null;
  const ofGyle = line.missing.of === "gyle";
  const href = ofGyle
    ? hrefTo("office", "gyles", props.gyle)
    : hrefTo("office", "beers", props.beer);
  return (
    <p>
      <a
        class="look"
        href={href}
        aria-label={`For ${line.label} enter the ${line.missing.of}'s ${listWords(line.missing.words)}`}
      >
        Enter {listWords(line.missing.words)}
      </a>
    </p>
  );
};

export const DoseStrip = (props: {
  lines: readonly DoseLine[];
  volumeMl: number;
  gyle: string;
  beer: string;
}) => {
  const { lines } = props;
  if (lines.length === 0) return null;
  // One line under the strip at most, so that the jobs stay in sight above the pad.
  const lacking = lines.find((line) => line.missing !== null);
  const caution = lacking ? null : cautionLine(lines);
  return (
    <section class="doses" aria-label={`Doses for ${litres(props.volumeMl)}`}>
      <ul>
        {lines.map((line) => (
          <Cell key={line.what} line={line} volumeMl={props.volumeMl} />
        ))}
      </ul>
      {lacking && <Missing line={lacking} gyle={props.gyle} beer={props.beer} />}
      {caution && <p class="small">{caution}</p>}
      <LotsLine lines={lines} />
    </section>
  );
};
