// Find by number, from every screen: the pad, and the containers that fit what is typed.

import { useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { useOwnStrip } from "../out/own-strip.ts";
import { headOf } from "../parts/head-of.ts";
import { Line } from "../parts/Line.tsx";
import { Pad } from "../parts/pad/Pad.tsx";
import { SavedStrip } from "../parts/Saved.tsx";
import { said } from "../parts/say.ts";
import { beginning, readTyped } from "../parts/typed-number.ts";
import { containerHref, goOnTo } from "../shell/route.ts";
import { containerName, sentence, standingWords } from "../words.ts";

/** Enough to scroll with a thumb; another digit says more than a longer list. */
const MOST = 20;

export default () => {
  useOwnStrip();
  const [typed, setTyped] = useState("");
  const containers = book.containers.value;
  const found = beginning(typed, containers, MOST);
  const meant = readTyped(typed, containers);
  const to = meant.is === "one" ? meant.number : "";
  const cannot =
    meant.is === "one"
      ? null
      : meant.is === "several"
        ? "Tap the one that is meant."
        : "Type a number.";
  return (
    <div class="bench">
      {typed === "" && <p class="now small">Type the number, or part of it.</p>}
      {typed !== "" && (
        <p class="now typed">
          <output aria-live="polite">{typed}</output>
          <span class="small">
            {found.length === 0 ? "Nothing on record begins so." : ""}
            {found.length === MOST ? "Another digit narrows it down." : ""}
          </span>
        </p>
      )}
      <ul>
        {found.map((number) => {
          const standing = containers.get(number);
          return standing ? (
            <Line
              key={number}
              look={headOf(standing, known.value.now)}
              title={containerName(standing)}
              reason={sentence(standingWords(standing, known.value))}
              href={containerHref(number)}
            />
          ) : null;
        })}
      </ul>
      <div class="hand">
        {said.value !== null && typed === "" && <SavedStrip />}
        <Pad
          typed={typed}
          onTyped={setTyped}
          types="number"
          runs={false}
          go={{ does: "Show", to, cannot, onPress: () => to !== "" && goOnTo("c", to) }}
        />
      </div>
    </div>
  );
};
