// The thumb pad: digits, letters on demand, a dash for runs, and one big button that names what it
// will act on. It knows nothing of containers; what is typed is handed up as text.

import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { ScanProps } from "../scan/Scan.tsx";
import { Letters } from "./Letters.tsx";
import { faultWords, say } from "./say.ts";

export interface PadProps {
  typed: string;
  onTyped: (typed: string) => void;
  /** "number": digits, letters and runs. "litres": digits and a point. "pin": up to 8 digits. */
  types: "number" | "litres" | "pin";
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

const MOST = 17; // a run of two longest numbers and its dash

const allowed = (key: string, typed: string, types: PadProps["types"]): boolean => {
  if (typed.length >= MOST) return false;
  if (types === "pin") return /^\d$/.test(key) && typed.length < 8;
  if (types === "litres") {
    return key === "." ? !typed.includes(".") : /^\d$/.test(key) && typed.length < 7;
  }
  if (key === "-") return typed !== "" && !typed.includes("-");
  return /^[0-9A-Z]$/.test(key) && (typed.split("-").at(-1) ?? "").length < 8;
};

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
  const clear = (
    <button type="button" class="word" onClick={() => change("")}>
      Clear
    </button>
  );
  const scan = async () => {
    try {
      const { default: Camera } = await import("../scan/Scan.tsx");
      setScan(() => Camera);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  /** A run needs a number to begin with: until there is one, its key leads to the camera. */
  const dash = props.runs !== false && typed !== "";
  const digit = (d: string) => (
    <button type="button" key={d} onClick={() => put(d)}>
      {d}
    </button>
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
      {Scan !== null && <Scan onNumber={change} />}
      {Scan === null && ["1", "2", "3", "4", "5", "6", "7", "8", "9"].map(digit)}
      {props.side && (
        <button type="button" class="word" onClick={props.side.onPress}>
          {props.side.label}
          {props.side.hint && <small>{props.side.hint}</small>}
        </button>
      )}
      {Scan === null && (
        <>
          {types === "number" ? (
            <button
              type="button"
              class="word"
              aria-label="Letters"
              onClick={() => setLetters(true)}
            >
              ABC
            </button>
          ) : types === "pin" ? (
            clear
          ) : (
            <button type="button" aria-label="Decimal point" onClick={() => put(".")}>
              .
            </button>
          )}
          {digit("0")}
          <button type="button" aria-label="Delete" onClick={back}>
            <Delete />
          </button>
        </>
      )}
      {types !== "number" ? null : Scan !== null ? (
        <button type="button" class="word" onClick={() => setScan(null)}>
          Type
        </button>
      ) : dash ? (
        <button type="button" class="word" aria-label="Dash, for a run" onClick={() => put("-")}>
          –<small>run to</small>
        </button>
      ) : (
        <button type="button" class="word" onClick={() => void scan()}>
          Scan
        </button>
      )}
      {types === "litres" && clear}
    </fieldset>
  );
};

export const Delete = () => (
  <svg viewBox="0 0 28 20" width="28" height="20" aria-hidden="true">
    <path
      d="M9 2h17v16H9L2 10ZM13 6.5l7 7m0-7-7 7"
      fill="none"
      stroke="currentColor"
      stroke-width="2.2"
      stroke-linejoin="round"
    />
  </svg>
);

interface Keys {
  put: (key: string) => void;
  back: () => void;
  go: () => void;
}

const press = (keys: Keys, event: KeyboardEvent): void => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
  const on = event.target instanceof Element ? event.target : null;
  if (on?.closest("input, select, textarea")) return;
  if (event.key === "Backspace") keys.back();
  else if (event.key === "Enter" && !on?.closest("button, a, summary")) keys.go();
  else if (event.key.length === 1) keys.put(event.key.toUpperCase());
};

/** A tablet with a keyboard, or a scanner that types: keys do what the pad does. */
const useKeyboard = (keys: Keys) => {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => press(latest.current, event);
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
};
