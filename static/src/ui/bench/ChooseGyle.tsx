// Which gyle is racked: chosen once, then it stays until the next.

import { book } from "../../store/book.ts";
import { sync } from "../../sync/engine.ts";
import { known } from "../known.ts";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Line, Lines } from "../parts/Line.tsx";
import { goOnTo, hrefTo } from "../shell/route.ts";
import { brewName, dayWords, litres } from "../words.ts";
import { leftMl, openGyles } from "./gyles.ts";
import { gyleId } from "./state.ts";

/** A phone that has never heard from the brewery knows of no gyle, which is not the same as none. */
const NotYet = () => (
  <Empty
    says={
      sync.state.value.busy
        ? "Fetching what the brewery knows. It takes a moment the first time."
        : "This phone has not heard from the brewery yet, so it knows of no gyle. Washing and inspecting can be noted all the same."
    }
  >
    <Button onPress={() => void sync.now()}>Ask the brewery</Button>
  </Empty>
);

export const ChooseGyle = () => {
  const gyles = openGyles(book.gyles.value);
  if (gyles.length === 0 && sync.state.value.lastSyncAt === null) return <NotYet />;
  if (gyles.length === 0) {
    return (
      <Empty says="No gyle is on record yet. A gyle is one brew of one beer; enter it in the Office and it can be racked here.">
        <a class="button main" href={hrefTo("office", "gyles")}>
          To the Office
        </a>
      </Empty>
    );
  }
  const choose = (id: string) => {
    gyleId.value = id;
    goOnTo("bench");
  };
  return (
    <Lines heading="Rack from" count={gyles.length}>
      {gyles.map(([id, gyle]) => {
        const left = leftMl(gyle);
        const brewed = gyle.fields.brewed_on;
        const reason = [
          brewed === undefined ? "" : `brewed ${dayWords(brewed, known.value.now)}`,
          left === null ? "" : left > 0 ? `${litres(left)} left` : "all of it racked",
        ]
          .filter(Boolean)
          .join(", ");
        const label = id === gyleId.value ? "Stay" : "Rack";
        return (
          <Line
            key={id}
            title={brewName(known.value, id)}
            reason={reason}
            action={{ label, onPress: () => choose(id) }}
          />
        );
      })}
    </Lines>
  );
};
