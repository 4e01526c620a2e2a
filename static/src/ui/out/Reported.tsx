// What finders have said of where containers are, until a person has seen to it.

import { computed } from "@preact/signals";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { questions } from "../office/questions/open.ts";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { containerHref } from "../shell/route.ts";
import { containerName, queryWords } from "../words.ts";

const reports = computed(() =>
  questions(book.containers.value.values()).filter(({ query }) => query.rule === "reported"),
);

export const Reported = () => {
  const all = reports.value;
  return all.length === 0 ? null : (
    <Lines heading="Reported by finders" count={all.length}>
      {all.map(({ standing, query }) => (
        <Line
          key={query.id}
          look={headOf(standing, known.value.now)}
          title={containerName(standing)}
          reason={queryWords(query, known.value)}
          tone="look"
          href={containerHref(standing.number)}
        />
      ))}
    </Lines>
  );
};
