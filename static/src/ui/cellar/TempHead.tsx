// What the thermometers say, at the head of the Cellar; a touch leads to where they are noted.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { hrefTo } from "../shell/route.ts";
import { tempsOf, tempWords } from "./temperatures.ts";

/** More would push the beer off a small screen. */
const AT_ONCE = 2;

export const TempHead = () => {
  const { now } = known.value;
  const all = tempsOf(book.places.value).filter(
    ({ latest, usualDecidegc }) => latest !== null || usualDecidegc !== null,
  );
  return (
    <a class="temps" href={hrefTo("cellar", "temperatures")}>
      {all.length === 0 && <span>Temperatures: none noted yet</span>}
      {all.slice(0, AT_ONCE).map((place) => (
        <span key={place.id}>{tempWords(place, now)}</span>
      ))}
      {all.length > AT_ONCE && <span>and {all.length - AT_ONCE} more</span>}
    </a>
  );
};
