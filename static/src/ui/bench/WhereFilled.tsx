// Where filled containers stand: chosen once for the racking, kept on this phone.

import { book } from "../../store/book.ts";
import { placesFor } from "../cellar/places.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { formAndBack, goOnTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { filledPlace } from "./jobs.ts";
import { standsIn } from "./state.ts";

const WhereFilled = () => {
  useTitle("Where to");
  const places = placesFor(book.places.value).filter(({ role }) => role !== "yard");
  if (places.length === 0) {
    return (
      <Nothing says="No place is entered yet. A cold room is enough to begin with.">
        <a class="button main" href={formAndBack("places", "new")}>
          Enter a place
        </a>
      </Nothing>
    );
  }
  return (
    <Lines heading="Filled containers go to">
      {places.map(({ id, name }) => (
        <Line
          key={id}
          title={name}
          action={{
            label: id === filledPlace() ? "Stay" : "Here",
            onPress: () => {
              standsIn.value = id;
              goOnTo("bench");
            },
          }}
        />
      ))}
    </Lines>
  );
};

export default WhereFilled;
