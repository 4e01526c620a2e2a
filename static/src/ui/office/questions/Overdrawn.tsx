// Gyles from which more was racked than there was.

import { computed } from "@preact/signals";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { brewName, litres, sentence } from "../../words.ts";
import { overdrawn } from "./overdrawn.ts";

export const allOverdrawn = computed(() => overdrawn(book.gyles.value));

export const OverdrawnGyles = () => {
  useTitle("Gyles drawn too far");
  const all = allOverdrawn.value;
  if (all.length === 0) {
    return <Nothing says="No gyle has been drawn beyond the litres it had." />;
  }
  return (
    <>
      <p class="none">
        Either the gyle had more than was entered, or a fill was entered twice or under the wrong
        gyle.
      </p>
      <Lines heading="Drawn beyond their volume" count={all.length}>
        {all.map(({ gyle, volume_ml, drawn_ml }) => (
          <Line
            key={gyle}
            title={sentence(brewName(known.value, gyle))}
            reason={`${litres(drawn_ml)} racked, ${litres(volume_ml)} entered: ${litres(drawn_ml - volume_ml)} too much.`}
            tone="look"
            href={hrefTo("office", "gyles", gyle)}
          />
        ))}
      </Lines>
    </>
  );
};
