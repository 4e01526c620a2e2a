// What the figures of the trade are called and where they come from: fetched when somebody looks, kept from then on.

import { useEffect, useState } from "preact/hooks";

export type Sources = Readonly<
  Record<
    string,
    { name: string; unit: string; kind: string; source: string | null; remark: string }
  >
>;

let fetched: Sources | null = null;

/** By the figure's id; null while they are fetched, none where that does not work. */
export const useSources = (): Sources | null => {
  const [sources, setSources] = useState(fetched);
  useEffect(() => {
    if (fetched !== null) return;
    import("../../../../cellarapp/domain/figures.json?sources").then(
      (found) => {
        fetched = found.default;
        setSources(fetched);
      },
      () => setSources({}),
    );
  }, []);
  return sources;
};
