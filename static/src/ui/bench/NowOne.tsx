// The one container that is meant: its head, its last known place and state, and what is odd.

import type { Standing } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { Others } from "../parts/pad/Others.tsx";
import { said } from "../parts/say.ts";
import { Lazy } from "../shell/Lazy.tsx";
import { containerHref } from "../shell/route.ts";
import { tryOut } from "../try-out.ts";
import { containerName, type Known, litres, outcomeRemarks, placeFacet } from "../words.ts";
import { shortWords } from "./gyles.ts";
import { capacityOf, deedsFor, refusal } from "./jobs.ts";
import { NEW_CONTAINER } from "./new-container.ts";
import { StandsIn } from "./StandsIn.tsx";
import { chosen, gyleId, job, meant, moving, volumeMl } from "./state.ts";

/** "takes 40 L, 0.9 L of air" */
const takesWords = (volume: number, capacity: number | null): string =>
  capacity === null || volume >= capacity
    ? `takes ${litres(volume)}`
    : `takes ${litres(volume)}, ${litres(capacity - volume)} of air`;

export const NowOne = (props: {
  number: string;
  standing: Standing | null;
  doing: string;
  known: Known;
}) => {
  const { number, standing, known } = props;
  const onRecord = standing?.registered != null;
  // Entered on the spot under the wrong number, what it is moves along with what was done.
  const asksKind =
    job.value !== "fine" &&
    !onRecord &&
    (moving.value === null || moving.value.entries.length === 1);
  const outcome = tryOut(number, standing, deedsFor(standing), known.now);
  const remarks = onRecord ? outcomeRemarks(outcome, known, props.doing) : [];
  const capacity = capacityOf(standing);
  const volume = volumeMl.value;
  const cannot = moving.value === null ? refusal(number, standing) : null;
  const short =
    job.value === "fill" && moving.value === null
      ? shortWords(book.gyles.value.get(gyleId.value), volume ?? capacity ?? 0)
      : "";
  const place = standing?.trip ? null : standing && placeFacet(standing, known);
  return (
    <div class="now">
      {/* First, since it has to be answered: what comes after it may have to be scrolled to. */}
      {asksKind && (
        <div class="unknown">
          <p class="look">{number} is not on record. What is it?</p>
          <Lazy screen={NEW_CONTAINER} path={[]} />
        </div>
      )}
      <a href={containerHref(number)} aria-label={`Page of ${number}`}>
        <Head look={standing ? headOf(standing, known.now) : bareHead(number)} size="large" />
      </a>
      <div>
        <p>
          <strong>{standing ? containerName(standing) : number}</strong>
          {onRecord && capacity !== null && `, ${litres(capacity)}`}
          {volume !== null && job.value === "fill" && <b>{`, ${takesWords(volume, capacity)}`}</b>}
        </p>
        {short && <p class="look">{short}</p>}
        {place && <p class="small">{place.says}</p>}
        {moving.value !== null && <p class="look">This one, not {moving.value.number}.</p>}
        {(cannot ? [] : remarks).map((remark) => (
          <p key={remark.says} class={remark.tone || "small"}>
            {remark.says}
          </p>
        ))}
        {cannot && !said.value?.trouble && <p class="look">{cannot}</p>}
        {job.value === "fill" && moving.value === null && <StandsIn />}
        {meant.value.is === "one" && <Others of={meant.value} chosen={chosen} />}
      </div>
    </div>
  );
};
