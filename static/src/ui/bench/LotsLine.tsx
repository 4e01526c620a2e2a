// Which lots are noted with the doses; behind it the choice of others.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { hrefTo } from "../shell/route.ts";
import type { DoseLine } from "./doses.ts";
import { lotsLine } from "./lots.ts";
import { usedLots } from "./lots-used.ts";
import { job, typed } from "./state.ts";

export const LotsLine = ({ lines }: { lines: readonly DoseLine[] }) => {
  const added = lines.filter((line) => line.each !== null && (job.value === "fine" || !line.later));
  const line = lotsLine(added, {
    lots: book.lots.value,
    used: usedLots.value,
    now: known.value.now,
    own: ownFigures.value,
  });
  // With a number on the pad there is room for what matters only.
  return line === null || (typed.value !== "" && line.tone === "small") ? null : (
    <p>
      <a class={line.tone} href={hrefTo("bench", "lots")}>
        {line.says}
      </a>
    </p>
  );
};
