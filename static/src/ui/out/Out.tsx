// Out: which customers have our containers, whom to ask first, and the way back into the yard.

import { Slices } from "../cellar/Slices.tsx";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { hrefTo } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { pounds } from "../words/money.ts";
import { count, customerName } from "../words.ts";
import { CameBack } from "./CameBack.tsx";
import { ChooseCustomer } from "./ChooseCustomer.tsx";
import { CustomerPage } from "./Customer.tsx";
import { countedHead } from "./counted-head.ts";
import { Drop } from "./drop/Drop.tsx";
import { HiredDue } from "./HiredDue.tsx";
import { brokenPromise, type Holding } from "./holdings.ts";
import { Reported } from "./Reported.tsx";
import { holdingWords, totalWords } from "./reasons.ts";
import { SendOut } from "./SendOut.tsx";
import { Strays } from "./Strays.tsx";
import { allHoldings, calls } from "./state.ts";
import { WhomToCall } from "./WhomToCall.tsx";

const HoldingLine = ({ holding }: { holding: Holding }) => (
  <Line
    look={countedHead(holding)}
    title={customerName(known.value, holding.customer)}
    reason={holdingWords(holding, known.value.now)}
    {...(brokenPromise(holding, known.value.now) === null ? {} : { tone: "look" as const })}
    href={hrefTo("out", "at", holding.customer)}
    figure={{
      value: String(holding.longest),
      unit: holding.away.length === 1 ? "days out" : "days, longest",
    }}
  />
);

const HoldingLines = (props: { heading: string; all: readonly Holding[] }) =>
  props.all.length === 0 ? null : (
    <Lines heading={props.heading} count={totalWords(props.all)}>
      <Slices
        items={props.all}
        each={(holding) => <HoldingLine key={holding.customer} holding={holding} />}
      />
    </Lines>
  );

/** The way to whom to call, with what is at stake. */
const ToCall = () => {
  const { today } = calls.value;
  if (today.length === 0) return null;
  const pence = today.reduce((sum, { worth }) => sum + worth.result.worth_pence, 0);
  return (
    <ul class="lines">
      <Line
        title="Whom to call today"
        reason={`${count(today.length, "customer")}, ${pounds(pence)} at stake`}
        tone="look"
        href={hrefTo("out", "call")}
      />
    </ul>
  );
};

const Overview = () => {
  const all = allHoldings.value;
  return (
    <div class="out">
      {all.length === 0 && <Nothing says="No container is out. Every one is at the brewery." />}
      <ToCall />
      <Reported />
      <HoldingLines heading="Overdue" all={all.filter(({ overdue }) => overdue > 0)} />
      <HoldingLines heading="In time" all={all.filter(({ overdue }) => overdue === 0)} />
      <HiredDue />
      <Strays />
      {may("sent") ? (
        <div class="dock">
          <a class="button main" href={hrefTo("out", "back")}>
            Came back
          </a>
          <a class="button" href={hrefTo("out", "send")}>
            Send out
          </a>
          <a class="button" href={hrefTo("out", "round")}>
            Round
          </a>
        </div>
      ) : (
        <NotMine kind="sent" />
      )}
    </div>
  );
};

const AT_THE_VAN = ["back", "send", "round", "make-up", "drop"];

const Out = ({ path }: ScreenProps) => {
  const [where = "", which] = path;
  if (AT_THE_VAN.includes(where) && !may("sent")) return <NotMine kind="sent" />;
  if (where === "round" || where === "make-up" || where === "drop") {
    return <Drop where={where} id={which} />;
  }
  if (where === "back") return <CameBack />;
  if (where === "call") return <WhomToCall />;
  if (where === "send") return which === "to" ? <ChooseCustomer /> : <SendOut />;
  if (where === "at" && which !== undefined) return <CustomerPage key={which} customer={which} />;
  return <Overview />;
};

export default Out;
