// The Bar: what lies on the stillage and what is on sale.

import { useOwnStrip } from "../out/own-strip.ts";
import { Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { hrefTo } from "../shell/route.ts";
import { DipPad } from "./DipPad.tsx";
import type { Served } from "./lists.ts";
import { ServedLine } from "./ServedLine.tsx";
import { dipping, lists } from "./state.ts";

const ServedLines = (props: { heading: string; all: readonly Served[] }) =>
  props.all.length === 0 ? null : (
    <Lines heading={props.heading} count={props.all.length}>
      {props.all.map((served) => (
        <ServedLine key={served.standing.number} served={served} />
      ))}
    </Lines>
  );

const Stillage = () => {
  const { onSale, working, waiting } = lists.value;
  if (onSale.length + working.length + waiting.length === 0) {
    return (
      <Nothing says="Nothing is on the stillage. What is ready stands in the Cellar.">
        <a class="button main" href={hrefTo("cellar")}>
          To the Cellar
        </a>
      </Nothing>
    );
  }
  return (
    <>
      <NotMine kind="tapped" />
      <ServedLines heading="On sale" all={onSale} />
      <ServedLines heading="Working" all={working} />
      <ServedLines heading="Not vented yet" all={waiting} />
    </>
  );
};

const Dipping = (props: { number: string; typed: string }) => {
  useOwnStrip();
  return <DipPad {...props} />;
};

const Bar = () => {
  const dip = dipping.value;
  return dip === null ? <Stillage /> : <Dipping {...dip} />;
};

export default Bar;
