// Where what is filled will stand, with the way to choose another place.

import { AT_THE_BREWERY } from "../../domain/inference.ts";
import { known } from "../known.ts";
import { hrefTo } from "../shell/route.ts";
import { placeName } from "../words.ts";
import { filledPlace } from "./jobs.ts";

export const StandsIn = () => {
  const place = filledPlace();
  return (
    <a class="button quiet" href={hrefTo("bench", "place")}>
      {place === AT_THE_BREWERY
        ? "Filled, it goes where?"
        : `Filled, to ${placeName(known.value, place)}`}
    </a>
  );
};
