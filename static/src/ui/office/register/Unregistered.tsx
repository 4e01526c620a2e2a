// Numbers that were used and never entered: what are they?

import { computed } from "@preact/signals";
import type { Standing } from "../../../domain/standing.ts";
import { book } from "../../../store/book.ts";
import { newFacts } from "../../bench/jobs.ts";
import NewContainer from "../../bench/NewContainer.tsx";
import { newKind } from "../../bench/state.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { headOf } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { save, say } from "../../parts/say.ts";
import { containerHref } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { count, kindName, sentence, standingWords } from "../../words.ts";
import { register } from "./state.ts";

export const unregistered = computed(() =>
  register(book.containers.value.values(), { words: "", kind: "", state: "unknown" }),
);

const enter = (all: readonly Standing[]) => {
  const facts = newFacts();
  if (!facts.capacity_ml)
    return say.trouble("How many litres does one hold? Type it beside its kind.");
  const drafts = all.map(({ number }) => ({ kind: "registered" as const, subject: number, facts }));
  const [first] = all;
  const what =
    all.length === 1 && first !== undefined ? first.number : count(all.length, "container");
  void save(`${what} entered as ${kindName(newKind.peek()).toLowerCase()}.`, () =>
    book.recordMany(drafts),
  );
};

export const Unregistered = () => {
  useTitle("Not registered");
  const all = unregistered.value;
  if (all.length === 0) return <Nothing says="Every number that was used is on record." />;
  return (
    <>
      <div class="form">
        <NewContainer />
        {all.length > 1 && (
          <button type="button" class="button" onClick={() => enter(all)}>
            All {all.length} are that
          </button>
        )}
      </div>
      <Lines heading="Used but never entered" count={all.length}>
        <Slices
          items={all}
          each={(standing) => (
            <Line
              key={standing.number}
              look={headOf(standing, known.value.now)}
              title={standing.number}
              reason={sentence(standingWords(standing, known.value))}
              href={containerHref(standing.number)}
              action={{ label: "Enter", onPress: () => enter([standing]) }}
            />
          )}
        />
      </Lines>
    </>
  );
};
