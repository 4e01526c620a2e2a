// What opens under a line near the foot of the screen is brought above the strip and the places.

import { useEffect, useRef } from "preact/hooks";

export const useInView = <E extends Element>() => {
  const opened = useRef<E>(null);
  useEffect(() => opened.current?.scrollIntoView({ block: "nearest" }), []);
  return opened;
};
