// A tablet with a keyboard, or a scanner that types: keys do what the pad does.

import { useEffect, useRef } from "preact/hooks";

interface Keys {
  put: (key: string) => void;
  back: () => void;
  go: () => void;
}

const press = (keys: Keys, event: KeyboardEvent): void => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
  const on = event.target instanceof Element ? event.target : null;
  // A job just chosen still has the focus, and a scanner types right on.
  if (on?.closest("input:not([type=radio]), select, textarea")) return;
  if (event.key === "Backspace") keys.back();
  else if (event.key === "Enter" && !on?.closest("button, a, summary")) keys.go();
  else if (event.key.length === 1) keys.put(event.key.toUpperCase());
};

export const useKeyboard = (keys: Keys) => {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => press(latest.current, event);
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
};
