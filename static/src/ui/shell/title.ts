// The title in the head line and of the page.

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

/** A title nearer than that of the screen: "Firkin 117". Null while the screen's own will do. */
export const nearerTitle = signal<string | null>(null);

/** Show a nearer title for as long as the component is on screen. */
export const useTitle = (title: string): void => {
  useEffect(() => {
    nearerTitle.value = title;
    return () => {
      nearerTitle.value = null;
    };
  }, [title]);
};
