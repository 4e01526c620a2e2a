// Whom to call today, in the order of what a call is worth; and who has promised or was asked.

import { Slices } from "../cellar/Slices.tsx";
import { known } from "../known.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { hrefTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { pounds } from "../words/money.ts";
import { count, customerName } from "../words.ts";
import { callReason, restWords } from "./call-words.ts";
import type { Call } from "./calls.ts";
import { countedHead } from "./counted-head.ts";
import { calls } from "./state.ts";

const CallLine = ({ call, says }: { call: Call; says: string }) => (
  <Line
    look={countedHead(call.holding)}
    title={customerName(known.value, call.holding.customer)}
    reason={says}
    href={hrefTo("out", "at", call.holding.customer)}
    figure={{ value: pounds(call.worth.result.worth_pence), unit: "at stake" }}
  />
);

export const WhomToCall = () => {
  useTitle("Whom to call");
  const { now } = known.value;
  const { today, resting } = calls.value;
  return (
    <div class="out">
      {today.length === 0 && (
        <Nothing
          says={
            resting.length === 0
              ? "Nobody: nothing that is overdue is worth a call."
              : "Nobody today: all with overdue containers have promised a day, or were asked."
          }
        />
      )}
      {today.length > 0 && (
        <Lines heading="Call today" count={count(today.length, "customer")}>
          <Slices
            items={today}
            each={(call) => (
              <CallLine key={call.holding.customer} call={call} says={callReason(call, now)} />
            )}
          />
        </Lines>
      )}
      {resting.length > 0 && (
        <Lines heading="Not yet" count={count(resting.length, "customer")}>
          <Slices
            items={resting}
            each={(call) => (
              <CallLine key={call.holding.customer} call={call} says={restWords(call, now)} />
            )}
          />
        </Lines>
      )}
    </div>
  );
};
