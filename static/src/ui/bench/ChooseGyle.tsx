// Which gyle is racked: chosen once, then it stays until the next.

import type { Gyle } from "../../domain/records.ts";
import { book } from "../../store/book.ts";
import { sync } from "../../sync/engine.ts";
import { known } from "../known.ts";
import { Empty } from "../parts/Empty.tsx";
import { Line, Lines } from "../parts/Line.tsx";
import { More } from "../parts/More.tsx";
import { NotHeard } from "../parts/Nothing.tsx";
import { formAndBack, goOnTo, hrefTo } from "../shell/route.ts";
import { brewName, dayWords, litres } from "../words.ts";
import { gylesToRack, leftMl } from "./gyles.ts";
import { gyleId, instead } from "./state.ts";

/** A gyle is of a beer, so a brewery that has not begun is sent to where beginning is set out. */
const NoGyle = () =>
  book.beers.value.size === 0 ? (
    <Empty says="Nothing is entered yet. A few short steps in the Office, and the first cask can be filled here.">
      <a class="button main" href={hrefTo("office")}>
        Begin
      </a>
    </Empty>
  ) : (
    <Empty says="No gyle is on record yet. A gyle is one brew of one beer; enter it in the Office and it can be racked here.">
      <a class="button main" href={formAndBack("gyles", "new")}>
        Enter a gyle
      </a>
    </Empty>
  );

const choose = (id: string): void => {
  gyleId.value = id;
  instead.value = {};
  goOnTo("bench");
};

const reasonFor = (gyle: Gyle): string => {
  const left = leftMl(gyle);
  const brewed = gyle.fields.brewed_on;
  return [
    brewed === undefined ? "" : `brewed ${dayWords(brewed, known.value.now)}`,
    left === null ? "" : left > 0 ? `${litres(left)} left` : "all of it racked",
  ]
    .filter(Boolean)
    .join(", ");
};

const Gyles = ({ heading, all }: { heading: string; all: readonly [string, Gyle][] }) => (
  <Lines heading={heading} count={all.length}>
    {all.map(([id, gyle]) => (
      <Line
        key={id}
        title={brewName(known.value, id)}
        reason={reasonFor(gyle)}
        action={{ label: id === gyleId.value ? "Stay" : "Rack", onPress: () => choose(id) }}
      />
    ))}
  </Lines>
);

export default () => {
  const { toRack, older } = gylesToRack(book.gyles.value, known.value.now);
  if (toRack.length + older.length === 0) {
    return sync.state.value.lastSyncAt === null ? (
      <NotHeard still="Washing and inspecting can be noted all the same." />
    ) : (
      <NoGyle />
    );
  }
  return (
    <>
      {toRack.length > 0 && <Gyles heading="Rack from" all={toRack} />}
      {older.length > 0 && (
        <More label="Older gyles" open={toRack.length === 0}>
          <Gyles heading="Racked, or brewed long ago" all={older} />
        </More>
      )}
    </>
  );
};
