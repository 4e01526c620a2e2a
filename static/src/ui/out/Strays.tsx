// What came back and is not ours: whose it is, and since when it waits to go home.

import { book } from "../../store/book.ts";
import { once } from "../cellar/deed.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { newId } from "../office/new-id.ts";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { containerHref } from "../shell/route.ts";
import { containerName } from "../words.ts";
import { homeDrafts, type Stray, strays, strayWords } from "./strays.ts";

const goHome = (stray: Stray): void => {
  const { number } = stray.standing;
  const text = `${number} went home to ${stray.owner}.`;
  const drafts = homeDrafts(stray, book.customers.peek(), newId);
  void once(number, text, () => book.recordMany(drafts));
};

export const Strays = () => {
  const all = strays(book.containers.value.values(), known.value.now);
  return all.length === 0 ? null : (
    <Lines heading="Of others, to go home" count={all.length}>
      {all.map((stray) => (
        <Line
          key={stray.standing.number}
          look={headOf(stray.standing, known.value.now)}
          title={containerName(stray.standing)}
          reason={strayWords(stray)}
          href={containerHref(stray.standing.number)}
          {...(may("sent") ? { action: { label: "Went home", onPress: () => goHome(stray) } } : {})}
        />
      ))}
    </Lines>
  );
};
