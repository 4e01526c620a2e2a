// Customers who say that something of ours is empty, and to whom the van does not go yet.

import { known } from "../../known.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { customerName } from "../../words.ts";
import { saidEmpty } from "../holdings.ts";
import { saidWords } from "../reasons.ts";
import { allHoldings } from "../state.ts";
import { begin } from "./begin.ts";
import { madeToday, toMake } from "./drops.ts";

export const ReadyElsewhere = () => {
  const goneTo = new Set([...toMake.value, ...madeToday.value].map(({ customer }) => customer));
  const others = allHoldings.value.filter(
    (one) => saidEmpty(one).length > 0 && !goneTo.has(one.customer),
  );
  return others.length === 0 ? null : (
    <Lines heading="To collect, not on the round" count={others.length}>
      {others.map((one) => (
        <Line
          key={one.customer}
          title={customerName(known.value, one.customer)}
          reason={saidWords(one)}
          action={{ label: "Go there", onPress: () => void begin(one.customer) }}
        />
      ))}
    </Lines>
  );
};
