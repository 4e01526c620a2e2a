// The list of beers, gyles, places or customers.

import { useState } from "preact/hooks";
import { sync } from "../../../sync/engine.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Field } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { listed, recordSays, recordTone } from "./listing.ts";
import { docsOf, titleOf } from "./of-kind.ts";
import { RETIRED, type RecordSpec } from "./specs.ts";
import { enterUsualPlaces } from "./usual-places.ts";

/** From so many on a list is searched rather than read. */
const SEARCHED_FROM = 15;

export const RecordList = (props: { spec: RecordSpec; section: string }) => {
  const { spec, section } = props;
  useTitle(spec.many);
  const [words, setWords] = useState("");
  const docs = docsOf(spec.kind);
  const lists = [false, true].map((retired) =>
    listed(spec.kind, docs, (doc) => titleOf(spec.kind, doc, known.value), retired).filter(
      ({ title }) => title.toLowerCase().includes(words.trim().toLowerCase()),
    ),
  );
  const [inUse = [], retired = []] = lists;
  return (
    <>
      <div class="above">
        {may(spec.kind) && (
          <a class="button main wide" href={hrefTo("office", section, "new")}>
            New {spec.one}
          </a>
        )}
        {docs.size >= SEARCHED_FROM && (
          <Field label={`Find a ${spec.one}`} value={words} onValue={setWords} />
        )}
      </div>
      {docs.size === 0 && (
        <Nothing says={spec.nothing}>
          {spec.kind === "place" && may("place") && sync.state.value.lastSyncAt !== null && (
            <Button onPress={enterUsualPlaces}>Enter these four</Button>
          )}
        </Nothing>
      )}
      {[
        { heading: "In use", all: inUse },
        { heading: (spec.end ?? RETIRED).heading, all: retired },
      ].map(({ heading, all }) =>
        all.length === 0 ? null : (
          <Lines key={heading} heading={heading} count={all.length}>
            <Slices
              items={all}
              each={({ id, doc, title }) => {
                const tone = recordTone(spec.kind, doc, known.value, ownFigures.value);
                return (
                  <Line
                    key={id}
                    title={title}
                    reason={recordSays(spec.kind, doc, known.value, ownFigures.value)}
                    {...(tone === undefined ? {} : { tone })}
                    href={hrefTo("office", section, id)}
                  />
                );
              }}
            />
          </Lines>
        ),
      )}
    </>
  );
};
