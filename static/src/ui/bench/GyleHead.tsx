// The gyle under the spout: which beer, how many are filled, how much is left.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { hrefTo } from "../shell/route.ts";
import { beerDoc, gyleName, litres, sentence, strength } from "../words.ts";
import { holdingWords, leftMl } from "./gyles.ts";
import { gyleId } from "./state.ts";

const Down = () => (
  <svg viewBox="0 0 12 8" width="12" height="8" aria-hidden="true">
    <path
      d="m1.500 1.500 4.500 4.500 4.500-4.500"
      fill="none"
      stroke="currentColor"
      stroke-width="2.200"
    />
  </svg>
);

export const GyleHead = () => {
  const id = gyleId.value;
  const gyle = book.gyles.value.get(id);
  const beer = beerDoc(known.value, id);
  const left = leftMl(gyle);
  const volume = gyle?.fields.volume_ml ?? 0;
  const abv = beer?.fields.abv_tenths;
  const share = volume > 0 && left !== null ? Math.min(1, Math.max(0, 1 - left / volume)) : 0;
  return (
    <div class="gyle">
      <a href={hrefTo("bench", "gyle")}>
        <p>
          <strong>
            {beer?.fields.name ?? "Beer not known here"}{" "}
            <span class="whole">
              {abv === undefined ? "" : `${strength(abv)} `}
              <Down />
            </span>
          </strong>
        </p>
        <p class="small">
          <span>{gyleName(known.value, id)}</span>
          {book.whole.value && <span>{sentence(holdingWords(id, book.containers.value))}</span>}
          {left !== null && (
            <span class={left < 0 ? "look" : ""}>
              {left < 0 ? `${litres(-left)} more than it had` : `${litres(left)} left`}
            </span>
          )}
        </p>
        <div class="gauge" aria-hidden="true">
          <i style={{ width: `${share * 100}%` }} />
        </div>
      </a>
      <a class="button" href={hrefTo("bench", "plan")}>
        Plan
      </a>
    </div>
  );
};
