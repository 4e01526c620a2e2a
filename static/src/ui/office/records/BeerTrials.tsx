// The finings trials of a beer, and with which lots its rates were set.

import { book } from "../../../store/book.ts";
import { behindRates, lotsTried } from "../../bench/trial/lots-tried.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { hrefTo } from "../../shell/route.ts";

export const BeerTrials = ({ id }: { id: string }) => {
  const behind = behindRates(book.trials.value, id, known.value, ownFigures.value);
  const lots = lotsTried(behind, book.lots.value);
  return (
    <div class="form">
      {lots !== "" && <p>Its rates of finings were set by a trial. {lots}.</p>}
      <a class="button" href={hrefTo("bench", "trials", id)}>
        Finings trials of this beer
      </a>
    </div>
  );
};
