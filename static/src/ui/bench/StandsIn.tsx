// Where what is filled will stand, with the way to choose another place.

import { AT_THE_BREWERY } from "../../domain/inference.ts";
import { known } from "../known.ts";
import { hrefTo } from "../shell/route.ts";
import { placeName } from "../words.ts";
import { filledPlace } from "./jobs.ts";

export const StandsIn = () => {
  const place = filledPlace();
  return (
    <p>
      <a href={hrefTo("bench", "place")}>
        Then to {place === AT_THE_BREWERY ? "where?" : placeName(known.value, place)}
      </a>
    </p>
  );
};
