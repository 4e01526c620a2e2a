// On a screen with the pad, what was saved is said beside the pad, where the eyes are. The strip of
// the frame would lie on the keys.

import { useEffect } from "preact/hooks";

export const useOwnStrip = (): void => {
  useEffect(() => {
    const page = document.documentElement.classList;
    page.add("own-strip");
    return () => page.remove("own-strip");
  }, []);
};
