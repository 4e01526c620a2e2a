// How a container stands, in words: each sentence with who noted it.

import type { Standing as Doc } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { movesWords } from "../cellar/moves.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Head } from "../parts/Head.tsx";
import { headOf } from "../parts/head-of.ts";
import {
  beerFacet,
  byWords,
  cleanFacet,
  contentsWords,
  type Facet,
  heldFacet,
  litres,
  placeFacet,
  sentence,
} from "../words.ts";

const sizeWords = (standing: Doc): string =>
  [
    standing.capacity_ml === null ? "" : `holds ${litres(standing.capacity_ml)}`,
    standing.tare_g === null ? "" : `${standing.tare_g / 1000} kg empty`,
    standing.owner ? `belongs to ${standing.owner}` : "",
    standing.fills === 0
      ? "never filled"
      : `filled ${standing.fills} times`.replace(/ 1 times/, " once"),
  ]
    .filter(Boolean)
    .join(", ");

export const Standing = ({ standing }: { standing: Doc }) => {
  const at = known.value;
  const facets = [heldFacet, beerFacet, placeFacet, cleanFacet]
    .map((facet) => facet(standing, at))
    .filter((facet): facet is Facet => facet !== null);
  const contents = contentsWords(standing, at);
  const moves = movesWords(standing, ownFigures.value);
  return (
    <section class="standing">
      <Head look={headOf(standing, at.now)} size="large" />
      <div>
        {standing.last === "" && <p>Nothing is noted of {standing.number} yet.</p>}
        {contents !== "" && (
          <p>
            <strong>{contents}</strong>
          </p>
        )}
        {facets.map(({ says, mark, tone }) => (
          <p key={says}>
            <span class={tone ?? ""}>{sentence(says)}</span>
            <br />
            <span class="small">{byWords(mark)}</span>
          </p>
        ))}
        {moves.says !== "" && <p class={moves.tone || "small"}>{moves.says}</p>}
        {standing.registered !== null && <p class="small">{sentence(sizeWords(standing))}</p>}
        {book.corrections.value.has(`container:${standing.number}`) && (
          <p class="look">
            A correction is on its way. What stands here may change once the brewery has it.
          </p>
        )}
      </div>
    </section>
  );
};
