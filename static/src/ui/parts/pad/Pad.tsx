// The thumb pad: digits, letters on demand, a dash for runs, and one big button that names what it
// will act on. It knows nothing of containers; what is typed is handed up as text.

import type { ComponentType } from "preact";
import { useRef, useState } from "preact/hooks";
import type { ScanProps } from "../../scan/Scan.tsx";
import { faultWords, say } from "../say.ts";
import { allowed, type Types } from "./allowed.ts";
import { Delete } from "./Delete.tsx";
import { useKeyboard } from "./keyboard.ts";
import { Letters } from "./Letters.tsx";

export interface PadProps {
  typed: string;
  onTyped: (typed: string) => void;
  types: Types;
  /** Without runs the dash has no key, where only one container can be meant. */
  runs?: boolean;
  go: {
    /** What it does and to what, on two lines: "Fill", "117". */
    does: string;
    to: string;
    /** Why not now; the button says it when pressed. */
    cannot?: string | null;
    onPress: () => void;
  };
  /** A key of its own under the big button. */
  side?: { label: string; hint?: string; onPress: () => void };
}

export const Pad = (props: PadProps) => {
  const [letters, setLetters] = useState(false);
  const [Scan, setScan] = useState<ComponentType<ScanProps> | null>(null);
  const { typed, types, onTyped, go } = props;
  // A scanner types faster than the screen is drawn: each key counts on from the last one.
  const latest = useRef(typed);
  latest.current = typed;
  const change = (text: string) => {
    latest.current = text;
    onTyped(text);
  };
  const put = (key: string) => {
    if (key === "-" && props.runs === false) return;
    if (allowed(key, latest.current, types)) change(latest.current + key);
  };
  const back = () => change(latest.current.slice(0, -1));
  useKeyboard({ put, back, go: go.onPress });

  if (letters && types === "number") {
    return (
      <Letters
        onLetter={(letter) => {
          put(letter);
          setLetters(false);
        }}
        onBack={back}
        onDigits={() => setLetters(false)}
      />
    );
  }
  const scan = async () => {
    try {
      const { default: Camera } = await import("../../scan/Scan.tsx");
      setScan(() => Camera);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  const digit = (d: string) => (
    <button type="button" key={d} onClick={() => put(d)}>
      {d}
    </button>
  );
  const clear = <WordKey says="Clear" onPress={() => change("")} />;
  const leftOfNought = {
    number: <WordKey says="ABC" label="Letters" onPress={() => setLetters(true)} />,
    pin: clear,
    litres: (
      <button type="button" aria-label="Decimal point" onClick={() => put(".")}>
        .
      </button>
    ),
  };
  /** A run needs a number to begin with: until there is one, its key leads to the camera. */
  const runOrScan =
    props.runs !== false && typed !== "" ? (
      <WordKey says="–" hint="run to" label="Dash, for a run" onPress={() => put("-")} />
    ) : (
      <WordKey says="Scan" onPress={() => void scan()} />
    );
  return (
    <fieldset
      class={`pad ${props.side ? "side" : ""} ${types === "pin" ? "tall" : ""}`}
      aria-label="Number pad"
    >
      <button
        type="button"
        class="go"
        aria-disabled={go.cannot ? "true" : undefined}
        onClick={go.onPress}
      >
        {go.does}
        <br />
        {go.to}
      </button>
      {Scan === null ? [..."123456789"].map(digit) : <Scan onNumber={change} />}
      {props.side && (
        <WordKey says={props.side.label} hint={props.side.hint} onPress={props.side.onPress} />
      )}
      {Scan === null && (
        <>
          {leftOfNought[types]}
          {digit("0")}
          <button type="button" aria-label="Delete" onClick={back}>
            <Delete />
          </button>
        </>
      )}
      {types === "number" &&
        (Scan === null ? runOrScan : <WordKey says="Type" onPress={() => setScan(null)} />)}
      {types === "litres" && clear}
    </fieldset>
  );
};

/** A key with words on it. `label` is for who cannot see what the sign means. */
const WordKey = (props: {
  says: string;
  hint?: string | undefined;
  label?: string;
  onPress: () => void;
}) => (
  <button type="button" class="word" aria-label={props.label} onClick={props.onPress}>
    {props.says}
    {props.hint && <small>{props.hint}</small>}
  </button>
);
