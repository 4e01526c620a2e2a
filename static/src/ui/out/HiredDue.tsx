// Hired containers that are due back to their owner soon, wherever they are.

import { setting } from "../../domain/figures.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { containerHref } from "../shell/route.ts";
import { containerName, customerName } from "../words.ts";
import { hiredDue, hiredWords } from "./hired.ts";
import { isHome } from "./strays.ts";

export const HiredDue = () => {
  const { now } = known.value;
  const warnDays = Math.trunc(setting("hire_warn_days", ownFigures.value));
  const customers = book.customers.value;
  const all = hiredDue(book.containers.value.values(), now, warnDays, (one) =>
    isHome(one, customers),
  );
  return all.length === 0 ? null : (
    <Lines heading="Hired, due back soon" count={all.length}>
      {all.map((hired) => {
        const { standing } = hired;
        const where =
          standing.trip === null
            ? "At the brewery"
            : `At ${customerName(known.value, standing.trip.customer)}`;
        return (
          <Line
            key={standing.number}
            look={headOf(standing, now)}
            title={containerName(standing)}
            reason={hiredWords(hired, where, now)}
            tone="look"
            href={containerHref(standing.number)}
          />
        );
      })}
    </Lines>
  );
};
