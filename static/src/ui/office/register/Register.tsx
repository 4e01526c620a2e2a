// The register: every container, searched by number and filtered by kind and by what it is doing.

import { computed, signal } from "@preact/signals";
import { CONTAINER_KINDS } from "../../../domain/containers.ts";
import { book } from "../../../store/book.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { Field, Select } from "../../parts/Field.tsx";
import { headOf } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { containerHref, hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { containerName, kindName, sentence, standingWords } from "../../words.ts";
import { exactFirst, register, STATES, type State, type Wanted } from "./state.ts";

const wanted = signal<Wanted>({ words: "", kind: "", state: "" });

const found = computed(() =>
  exactFirst(register(book.containers.value.values(), wanted.value), wanted.value.words),
);

/** Only the kinds there are, so that the list is short enough for a thumb. */
const kinds = computed(() => {
  const there = new Set<string>();
  for (const { kind } of book.containers.value.values()) if (kind !== null) there.add(kind);
  return Object.keys(CONTAINER_KINDS)
    .filter((kind) => there.has(kind))
    .map((value) => ({ value, label: kindName(value) }));
});

const put = (change: Partial<Wanted>) => {
  wanted.value = { ...wanted.value, ...change };
};

export const Register = () => {
  useTitle("Containers");
  const { words, kind, state } = wanted.value;
  const all = found.value;
  return (
    <>
      <div class="above">
        {may("registered") && (
          <a class="button main wide" href={hrefTo("office", "containers", "new")}>
            New containers
          </a>
        )}
        <div class="filters">
          <Field
            label="Number or owner"
            value={words}
            onValue={(value) => put({ words: value })}
            capitals
          />
          <Select
            label="Kind"
            value={kind}
            onValue={(value) => put({ kind: value })}
            none="All"
            options={kinds.value}
          />
          <Select
            label="Now"
            value={state}
            onValue={(value) => put({ state: value as State | "" })}
            none="Any"
            options={Object.entries(STATES).map(([value, label]) => ({ value, label }))}
          />
        </div>
      </div>
      {book.containers.value.size === 0 ? (
        <Nothing says="No container is entered yet." />
      ) : all.length === 0 ? (
        <p class="none">None is like that. Look for less of the number, or for any kind.</p>
      ) : (
        <Lines heading="Containers" count={all.length}>
          <Slices
            key={`${words} ${kind} ${state}`}
            items={all}
            each={(standing) => (
              <Line
                key={standing.number}
                look={headOf(standing, known.value.now)}
                title={containerName(standing)}
                reason={sentence(standingWords(standing, known.value))}
                href={containerHref(standing.number)}
              />
            )}
          />
        </Lines>
      )}
    </>
  );
};
