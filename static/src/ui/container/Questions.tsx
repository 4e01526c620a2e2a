// What cannot be right as it stands, with its ways out as buttons. Settling is an entry too.

import { useState } from "preact/hooks";
import { openQueries } from "../../domain/queries.ts";
import type { Query, Standing } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { waysOut } from "../office/questions/ways.ts";
import { save } from "../parts/say.ts";
import { queryWords } from "../words.ts";
import { WhichNumber } from "./WhichNumber.tsx";

const Question = ({ standing, query }: { standing: Standing; query: Query }) => {
  const [moving, setMoving] = useState<string | null>(null);
  const settle = async (way: string): Promise<boolean> =>
    save(`${standing.number}: settled.`, () => book.settle(standing.number, query.id, way));
  return (
    <li class="oddity">
      <p class="look">{queryWords(query, known.value)}</p>
      <div class="buttons">
        {(may("settled") ? waysOut(query, known.value) : []).map((way) => (
          <button
            type="button"
            class="button"
            key={way.label}
            onClick={() => {
              if (way.is === "renumber") setMoving(way.target);
              else void settle(way.is === "right" ? "right" : `void:${way.target}`);
            }}
          >
            {way.label}
          </button>
        ))}
      </div>
      {moving !== null && (
        <WhichNumber
          wrong={standing.number}
          onNumber={(number) => settle(`renumber:${moving}:${number}`)}
          onLeave={() => setMoving(null)}
        />
      )}
    </li>
  );
};

export const Questions = ({ standing }: { standing: Standing }) => {
  const open = openQueries(standing);
  if (open.length === 0) return null;
  return (
    <section class="lines">
      <h2>{open.length === 1 ? "One thing does not fit" : `${open.length} things do not fit`}</h2>
      <ul>
        {open.map((query) => (
          <Question key={query.id} standing={standing} query={query} />
        ))}
      </ul>
    </section>
  );
};
